"""The roof: mounts the storeys by string."""

from django.contrib.auth import views as auth
from django.urls import include, path

from farm import views

urlpatterns = [
    path("", views.home, name="home"),
    path(
        "sign-in/",
        auth.LoginView.as_view(
            template_name="farm/sign_in.html", redirect_authenticated_user=True
        ),
        name="sign-in",
    ),
    path("sign-out/", auth.LogoutView.as_view(), name="sign-out"),
    path(
        "password/",
        auth.PasswordChangeView.as_view(
            template_name="farm/password.html", success_url="/password/changed/"
        ),
        name="password",
    ),
    path("password/changed/", views.password_changed, name="password-changed"),
    path("calendar/", include("records.feed_urls")),
    path("farms/new/", views.farm_new, name="farm-new"),
    path("farms/<slug:slug>/", views.farm_page, name="farm"),
    path("farms/<slug:slug>/edit/", views.farm_edit, name="farm-edit"),
    path("farms/<slug:slug>/people/", views.people, name="people"),
    path("farms/<slug:slug>/records/", include("records.urls")),
    path("farms/<slug:slug>/reports/", include("reports.urls")),
]
