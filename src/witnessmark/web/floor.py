"""The web floor laid once: routing, forms that cannot be forged, headers. It keeps no data of its own."""

from __future__ import annotations

import logging
import secrets
from pathlib import Path

import django
from django import conf

HERE = Path(__file__).resolve().parent
PAGES = HERE / "pages"
STATIC = HERE / "static"
MOST_BYTES = 256 * 1024  # of a form; a line is a few words


def lay_floor() -> None:
    """Settle how pages are served; a second call changes nothing."""
    if conf.settings.configured:
        return
    conf.settings.configure(
        DEBUG=False,
        SECRET_KEY=secrets.token_urlsafe(48),  # nothing that is signed outlives the program
        ALLOWED_HOSTS=["*"],  # doors.named knows better: it differs from server to server
        ROOT_URLCONF="witnessmark.web.routes",
        INSTALLED_APPS=[],
        MIDDLEWARE=[
            "django.middleware.security.SecurityMiddleware",
            "witnessmark.web.guarding.headed",
            "witnessmark.web.guarding.told_plainly",
            "witnessmark.web.shop.routed",
            "witnessmark.web.doors.named",
            "django.middleware.common.CommonMiddleware",
            "django.middleware.csrf.CsrfViewMiddleware",
            "django.middleware.clickjacking.XFrameOptionsMiddleware",
            "witnessmark.web.doors.guarded",
        ],
        TEMPLATES=[
            {
                "BACKEND": "django.template.backends.jinja2.Jinja2",
                "DIRS": [PAGES],
                "OPTIONS": {"environment": "witnessmark.web.showing.environment", "autoescape": True},
            }
        ],
        CSRF_COOKIE_NAME="witnessmark_form",
        CSRF_COOKIE_HTTPONLY=True,
        CSRF_COOKIE_SAMESITE="Strict",
        CSRF_FAILURE_VIEW="witnessmark.web.trouble.form_too_old",
        SECURE_CONTENT_TYPE_NOSNIFF=True,
        SECURE_REFERRER_POLICY="same-origin",
        SECURE_CROSS_ORIGIN_OPENER_POLICY="same-origin",
        X_FRAME_OPTIONS="DENY",
        DATA_UPLOAD_MAX_MEMORY_SIZE=MOST_BYTES,
        DATA_UPLOAD_MAX_NUMBER_FIELDS=200,
        FILE_UPLOAD_HANDLERS=["witnessmark.web.uploads.Nameless"],
        APPEND_SLASH=False,
        USE_I18N=False,
        USE_TZ=False,
        LOGGING_CONFIG=None,
    )
    django.setup()
    # A page that is not there is told on the page; that somebody waits for a moment need not be told.
    for name in ("django.request", "django.security", "waitress.queue"):
        logging.getLogger(name).setLevel(logging.ERROR)
