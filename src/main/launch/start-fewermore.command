#!/bin/sh
# Starts Fewermore in a window of its own: closing the window stops it. Linux; on macOS the same text as start-fewermore.command.
cd "$(dirname "$0")" || exit 1
for program in ./Fewermore/bin/Fewermore ./Fewermore.app/Contents/MacOS/Fewermore; do
  if [ -x "$program" ]; then
    exec "$program"
  fi
done
if command -v java >/dev/null 2>&1 && [ -f fewermore.jar ]; then
  exec java -Xmx128m -XX:+UseSerialGC -XX:TieredStopAtLevel=1 -XX:+ExitOnOutOfMemoryError -jar fewermore.jar --open
fi
echo "Fewermore was not found beside this file. Keep both in one folder, as they were unpacked."
printf 'Press Enter to close. '
read -r _
