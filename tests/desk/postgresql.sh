#!/usr/bin/env bash
# Runs a command with DATABASE_URL set to an empty PostgreSQL server that lives as long as the command.
set -euo pipefail

work=$(mktemp -d)
port=${PORT:-$((20000 + RANDOM % 20000))}
bin=$(dirname "$(command -v pg_ctl || ls /usr/lib/postgresql/*/bin/pg_ctl | tail -1)")
as() { if [ "$(id -u)" = 0 ]; then runuser -u postgres -- "$@"; else "$@"; fi; }
if [ "$(id -u)" = 0 ]; then chown postgres "$work"; fi
stop() { as "$bin/pg_ctl" -D "$work/data" -m immediate stop >/dev/null 2>&1 || true; rm -rf "$work"; }
trap stop EXIT

cd "$work"
as "$bin/initdb" -D "$work/data" -U desk -A trust -E UTF8 --locale=C.UTF-8 >/dev/null
as "$bin/pg_ctl" -D "$work/data" -w -l "$work/log" -o "-p $port -k $work -c listen_addresses=127.0.0.1 -c fsync=off" start >/dev/null
cd "$OLDPWD"
DATABASE_URL="postgresql://desk@127.0.0.1:$port/postgres" "$@"
