#!/bin/sh
# Runs every test. The browser tests need Chromium and its driver; on Debian and Ubuntu they are installed where missing.
set -eu
cd "$(dirname "$0")/../.."
if ! command -v chromium >/dev/null 2>&1 || ! command -v chromedriver >/dev/null 2>&1; then
  if command -v apt-get >/dev/null 2>&1; then
    as_root=""
    [ "$(id -u)" = 0 ] || as_root="sudo"
    $as_root apt-get update -q
    DEBIAN_FRONTEND=noninteractive $as_root apt-get install -y -q chromium chromium-driver
  else
    echo "Install Chromium and chromedriver first: the browser tests need both." >&2
    exit 1
  fi
fi
mvn -B -Pchecks verify
