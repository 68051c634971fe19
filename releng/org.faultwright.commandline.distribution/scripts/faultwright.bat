@echo off
rem The work of the workbench without a window: faultwright --help
setlocal
set "java=java"
if defined JAVA_HOME set "java=%JAVA_HOME%\bin\java"
"%java%" -version >nul 2>&1
if errorlevel 1 (
  echo faultwright: no Java was found. Install Java 17 or newer, or let JAVA_HOME name its folder. 1>&2
  exit /b 1
)
"%java%" -Dlog4j.defaultInitOverride=true -XX:TieredStopAtLevel=1 -XX:+UseSerialGC -Xlog:disable -Xshare:auto -Dfile.encoding=UTF-8 -jar "%~dp0..\lib\faultwright.jar" %*
exit /b %errorlevel%
