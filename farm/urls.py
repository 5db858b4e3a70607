"""The roof: mounts the storeys by string."""

from django.contrib.auth import views as auth
from django.urls import include, path

from farm import account_views, door_views, language_views, phone_views, views

handler400 = "farm.refusals.not_read"
urlpatterns = [
    path("", views.home, name="home"),
    path("favicon.ico", views.icon, name="icon"),
    path("language/", language_views.choose, name="language"),
    path("today/", phone_views.start, name="start"),
    path("who/", phone_views.who, name="who"),
    path("worker.js", phone_views.worker, name="worker"),
    path("farm.webmanifest", phone_views.manifest, name="manifest"),
    path("no-signal/", phone_views.no_signal, name="no-signal"),
    path("sign-in/", door_views.SignInView.as_view(), name="sign-in"),
    path("sign-in/second/", door_views.sign_in_second, name="sign-in-second"),
    path("come-in/<str:token>/", door_views.come_in, name="come-in"),
    path("sign-out/", auth.LogoutView.as_view(), name="sign-out"),
    path("password/", account_views.PasswordView.as_view(), name="password"),
    path("password/changed/", views.password_changed, name="password-changed"),
    path(
        "password/forgotten/",
        account_views.ForgottenView.as_view(),
        name="password-forgotten",
    ),
    path(
        "password/sent/",
        auth.PasswordResetDoneView.as_view(template_name="farm/password_sent.html"),
        name="password-sent",
    ),
    path(
        "password/new/<uidb64>/<token>/",
        account_views.NewPasswordView.as_view(),
        name="password-new",
    ),
    path("account/", account_views.account, name="account"),
    path("account/sign-ins/", account_views.sign_ins, name="sign-ins"),
    path("account/second/", account_views.second, name="second"),
    path("calendar/", include("records.feed_urls")),
    path("farms/new/", views.farm_new, name="farm-new"),
    path("farms/<slug:slug>/", views.farm_page, name="farm"),
    path("farms/<slug:slug>/edit/", views.farm_edit, name="farm-edit"),
    path("farms/<slug:slug>/today/", include("reports.crew_urls")),
    path("farms/<slug:slug>/people/", include("farm.people_urls")),
    path("farms/<slug:slug>/records/", include("records.urls")),
    path("farms/<slug:slug>/reports/", include("reports.urls")),
]
