@echo off
rem Opens the workbench. What follows the name is handed on, such as: -data FOLDER
setlocal
set "java=javaw"
if defined JAVA_HOME set "java=%JAVA_HOME%\bin\javaw"
"%java%" -version >nul 2>&1
if errorlevel 1 (
  echo faultwright-workbench: no Java was found. Install Java 17 or newer, or let JAVA_HOME name its folder. 1>&2
  exit /b 1
)
for %%f in ("%~dp0plugins\org.eclipse.equinox.launcher_*.jar") do set "launcher=%%f"
start "" "%java%" -XX:TieredStopAtLevel=1 -Xms128m -Xmx2g -XX:+UseG1GC -XX:+UseStringDeduplication -Dfile.encoding=UTF-8 -jar "%launcher%" -name Faultwright -showsplash "%~dp0splash.png" %*
