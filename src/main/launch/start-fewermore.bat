@echo off
rem Starts Fewermore in a window of its own: closing the window stops it.
cd /d "%~dp0"
if exist Fewermore\Fewermore.exe (
  Fewermore\Fewermore.exe
  exit /b
)
if exist fewermore.jar (
  java -Xmx128m -XX:+UseSerialGC -XX:TieredStopAtLevel=1 -XX:+ExitOnOutOfMemoryError -jar fewermore.jar --open
  if not errorlevel 1 exit /b
)
echo Fewermore was not found beside this file, or Java is missing. Keep both in one folder, as they were unpacked.
pause
