"""Every address of the list of vehicles."""

from __future__ import annotations

from django.urls import path

from witnessmark.web import doors, now, shop, trouble

handler400 = trouble.refused
handler404 = trouble.not_there
handler500 = trouble.broken

urlpatterns = [
    path("", shop.shop_page),
    path("here", now.here),
    path("in", doors.log_in_page),
    path("out", doors.log_out),
    path("phrase", doors.phrase_page),
    path("people", doors.people_page),
]
