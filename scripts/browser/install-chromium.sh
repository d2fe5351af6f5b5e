#!/usr/bin/env bash
# Installs Chromium, in which pictures and handouts are looked at, and pdftotext, which reads what it prints.
set -euo pipefail

if command -v chromium > /dev/null && command -v pdftotext > /dev/null; then exit 0; fi
if ! command -v apt-get > /dev/null; then
  echo 'no apt-get here: the tests in Chromium are skipped' >&2
  exit 0
fi
apt-get update -qq
DEBIAN_FRONTEND=noninteractive apt-get install -qq --no-install-recommends -y \
  chromium poppler-utils fonts-dejavu-core > /dev/null
