"""Addresses of the people of a farm."""

from django.urls import path

from farm import people_views as views

urlpatterns = [
    path("", views.people, name="people"),
    path("invite/", views.invite, name="invite"),
    path(
        "invitations/<int:invitation>/revoke/",
        views.invitation_revoke,
        name="invitation-revoke",
    ),
    path("looks/", views.looks, name="looks"),
    path("leave/", views.leave, name="leave"),
    path("<int:member>/", views.member, name="member"),
    path("<int:member>/end/", views.member_end, name="member-end"),
    path("<int:member>/hand-over/", views.hand_over, name="hand-over"),
    path("<int:member>/password/", views.member_password, name="member-password"),
]
