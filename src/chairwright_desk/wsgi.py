"""The desk for a server of one's own: a team's proxy and process manager start this."""

from __future__ import annotations

from django.core.wsgi import get_wsgi_application

from chairwright_desk import paths

paths.prepare()
application = get_wsgi_application()
