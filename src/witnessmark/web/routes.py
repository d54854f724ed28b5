"""Every address of the pages, in the order they are used."""

from __future__ import annotations

from django.urls import path, register_converter

from witnessmark.web import (
    ahead,
    answers,
    archive,
    bench,
    buying,
    doors,
    going,
    history,
    journal,
    line,
    now,
    paper,
    photos,
    planning,
    sweep,
    tools,
    trouble,
    vehicle,
    wall,
    week,
)
from witnessmark.web.asked import LineNumber, PhotoName

register_converter(LineNumber, "number")
register_converter(PhotoName, "photo")

handler400 = trouble.refused
handler404 = trouble.not_there
handler500 = trouble.broken

urlpatterns = [
    path("", now.now_page),
    path("wall", wall.wall_page),
    path("pages", now.every_page),
    path("here", now.here),
    path("in", doors.log_in_page),
    path("out", doors.log_out),
    path("phrase", doors.phrase_page),
    path("people", doors.people_page),
    path("line", line.line_page),
    path("line/write", line.write_line),
    path("line/send", line.send_line),
    path("down", tools.down_page),
    path("back", tools.back_page),
    path("plan", planning.plan_page),
    path("session", answers.session_page),
    path("ahead", ahead.ahead_page),
    path("ahead/moved", ahead.moved_page),
    path("whatif", ahead.whatif_page),
    path("owed", answers.owed_page),
    path("gate", answers.gates_page),
    path("gate/<slug:name>", answers.gate_page),
    path("needs", answers.needs_page),
    path("buy", buying.buy_page),
    path("shelf", answers.shelf_page),
    path("vehicle", vehicle.vehicle_page),
    path("vehicle/place", vehicle.place_page),
    path("journal", journal.journal_page),
    path("journal/<number:number>", journal.entry_page),
    path("journal/<number:number>/strike", journal.strike_page),
    path("journal/<number:number>/photo", photos.add_to_entry),
    path("photos", photos.photos_page),
    path("photos/add", photos.add_photos),
    path("photos/keep", photos.keep_photos),
    path("photo/<photo:name>", photos.photo),
    path("photo/<photo:name>/small", photos.small_photo),
    path("week", week.week_page),
    path("week/files", week.week_files),
    path("archive", archive.archive_page),
    path("going/<slug:key>", going.going_page),
    path("going/<slug:key>/leave", going.leave_off),
    path("history", history.history_page),
    path("bench", bench.bench_page),
    path("bench/<slug:subject>/<slug:question>", bench.question_page),
    path("sweep", sweep.sweep_page),
    path("sheets", paper.sheets_page),
    path("sheets/<slug:kind>", paper.sheet_page),
]
