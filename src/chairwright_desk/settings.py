"""Django's settings, from the environment.

`CHAIRWRIGHT_DESK_DATA` (data folder), `CHAIRWRIGHT_DESK_SECRET` (made into the data folder when it
is not given), `DATABASE_URL` (PostgreSQL instead of SQLite), `CHAIRWRIGHT_DESK_HOSTS` (names under
which a team reaches the desk through its own https proxy).
"""

from __future__ import annotations

import os
from pathlib import Path
from typing import Any

import dj_database_url
import font_source_sans_pro

from chairwright_desk import paths


def local_zone() -> str:
    """Return the machine's time zone where its system names it by a link, else UTC."""
    return str(Path("/etc/localtime").resolve()).partition("zoneinfo/")[2] or "UTC"


SECRET_KEY = os.environ.get(paths.SECRET, "")
DEBUG = False
HOSTS = [name for name in os.environ.get("CHAIRWRIGHT_DESK_HOSTS", "").split(",") if name]
ALLOWED_HOSTS = ["127.0.0.1", "localhost", "[::1]", *HOSTS]

INSTALLED_APPS = [
    "django.contrib.contenttypes",
    "django.contrib.auth",
    "django.contrib.sessions",
    "django.contrib.messages",
    "django.contrib.staticfiles",
    "django.forms",
    "django_htmx",
    *sorted(
        f"chairwright_desk.{file.parent.name}" for file in Path(__file__).parent.glob("*/apps.py")
    ),
]
"""Django's parts, and every folder of the desk that has an ``apps.py``."""


MIDDLEWARE = [
    "chairwright_desk.base.headers.headers",
    "whitenoise.middleware.WhiteNoiseMiddleware",
    "chairwright_desk.base.limits.limits",
    "chairwright_desk.accounts.sessions.Sessions",
    "django.middleware.common.CommonMiddleware",
    "django.middleware.csrf.CsrfViewMiddleware",
    "django.contrib.auth.middleware.AuthenticationMiddleware",
    "chairwright_desk.accounts.sessions.session_limits",
    "django.contrib.messages.middleware.MessageMiddleware",
    "django_htmx.middleware.HtmxMiddleware",
]

ROOT_URLCONF = "chairwright_desk.urls"
WSGI_APPLICATION = "chairwright_desk.wsgi.application"
FORM_RENDERER = "chairwright_desk.base.forms.DeskRenderer"
TEMPLATES = [
    {
        "BACKEND": "django.template.backends.django.DjangoTemplates",
        "APP_DIRS": True,
        "OPTIONS": {
            "context_processors": [
                "django.template.context_processors.request",
                "django.contrib.auth.context_processors.auth",
                "django.contrib.messages.context_processors.messages",
                "chairwright_desk.base.places.desk",
            ],
            "builtins": ["chairwright_desk.base.templatetags.desk"],
        },
    },
]

SQLITE_START = (
    "PRAGMA journal_mode=WAL; PRAGMA synchronous=FULL; PRAGMA foreign_keys=ON;"
    "PRAGMA busy_timeout=5000; PRAGMA secure_delete=ON;"
)


def sqlite(file: Path) -> dict[str, Any]:
    """Return Django's settings of an SQLite database that keeps every acknowledged save."""
    return {
        "ENGINE": "django.db.backends.sqlite3",
        "NAME": str(file),
        "CONN_MAX_AGE": None,
        "OPTIONS": {
            "transaction_mode": "IMMEDIATE",
            "timeout": 5,
            "init_command": SQLITE_START,
        },
    }


def postgresql(url: str) -> dict[str, Any]:
    """Return Django's settings of the database that a URL names."""
    return dict(dj_database_url.parse(url, conn_max_age=60, conn_health_checks=True))


URL = os.environ.get("DATABASE_URL")
DATABASES = {"default": postgresql(URL) if URL else sqlite(paths.database_file())}
DEFAULT_AUTO_FIELD = "django.db.models.BigAutoField"

AUTH_USER_MODEL = "accounts.User"
AUTHENTICATION_BACKENDS = ["django.contrib.auth.backends.ModelBackend"]
LOGIN_URL = "accounts:sign-in"
AUTH_PASSWORD_VALIDATORS: list[dict[str, Any]] = [
    {
        "NAME": "django.contrib.auth.password_validation.MinimumLengthValidator",
        "OPTIONS": {"min_length": 10},
    },
    {"NAME": "django.contrib.auth.password_validation.CommonPasswordValidator"},
    {"NAME": "django.contrib.auth.password_validation.NumericPasswordValidator"},
]

SESSION_IDLE_S = int(os.environ.get("CHAIRWRIGHT_DESK_IDLE_MINUTES", "60")) * 60
SESSION_LONGEST_S = int(os.environ.get("CHAIRWRIGHT_DESK_LONGEST_HOURS", "12")) * 3600
SESSION_COOKIE_AGE = SESSION_LONGEST_S
SESSION_EXPIRE_AT_BROWSER_CLOSE = True
SESSION_COOKIE_NAME = "desk_session"
SESSION_COOKIE_HTTPONLY = True
SESSION_COOKIE_SAMESITE = "Strict"
SESSION_COOKIE_SECURE = bool(HOSTS)
CSRF_COOKIE_NAME = "desk_form"
CSRF_COOKIE_HTTPONLY = True
CSRF_COOKIE_SAMESITE = "Strict"
CSRF_COOKIE_SECURE = bool(HOSTS)
CSRF_FAILURE_VIEW = "chairwright_desk.base.errors.form_refused"
CSRF_TRUSTED_ORIGINS = [f"https://{name}" for name in HOSTS]
if HOSTS:
    SECURE_PROXY_SSL_HEADER = ("HTTP_X_FORWARDED_PROTO", "https")
MESSAGE_STORAGE = "django.contrib.messages.storage.session.SessionStorage"

MOST_UPLOAD_BYTES = 50_000_000
DATA_UPLOAD_MAX_MEMORY_SIZE = 5_000_000
DATA_UPLOAD_MAX_NUMBER_FIELDS = 3000
FILE_UPLOAD_PERMISSIONS = 0o600

LANGUAGE_CODE = "en-gb"
LANGUAGES = [("en-gb", "English (day month year)"), ("en-us", "English (month day, year)")]
USE_TZ = True
TIME_ZONE = os.environ.get("CHAIRWRIGHT_DESK_TIME_ZONE") or local_zone()

STATIC_URL = "/static/"
STATICFILES_DIRS = [("fonts", str(Path(font_source_sans_pro.__file__).parent / "files"))]
WHITENOISE_USE_FINDERS = True
WHITENOISE_AUTOREFRESH = False

LOGGING = {
    "version": 1,
    "disable_existing_loggers": False,
    "formatters": {"quiet": {"()": "chairwright_desk.base.logs.QuietFormatter"}},
    "handlers": {"stderr": {"class": "logging.StreamHandler", "formatter": "quiet"}},
    "root": {"handlers": ["stderr"], "level": "WARNING"},
    "loggers": {"django": {"handlers": [], "propagate": True}},
}
