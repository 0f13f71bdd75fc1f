@echo off
rem Starts Spanwright; builds it first if there is no jar, or if a source is newer than the jar.
rem Needs a JDK from 17 on; to build, Maven too. JAVA_HOME and MAVEN_HOME are used if set.
setlocal enabledelayedexpansion
set "HOME_DIR=%~dp0"
if "%HOME_DIR:~-1%"=="\" set "HOME_DIR=%HOME_DIR:~0,-1%"
set "JAR=%HOME_DIR%\notebooks\target\spanwright.jar"

if defined JAVA_HOME (
  set "JAVA=%JAVA_HOME%\bin\java.exe"
  if not exist "!JAVA!" (
    echo spanwright: JAVA_HOME is %JAVA_HOME%, and there is no bin\java.exe in it 1>&2
    exit /b 2
  )
) else (
  where java >nul 2>nul
  if errorlevel 1 (
    echo spanwright: no java found. Install a JDK, version 17 or newer, or set JAVA_HOME 1>&2
    exit /b 2
  )
  set "JAVA=java"
)
rem Java tells its version as "17.0.1", or as "1.8.0" up to version 8.
set "VERSION="
for /f "tokens=3" %%v in ('"!JAVA!" -version 2^>^&1 ^| findstr /c:" version "') do if not defined VERSION set "VERSION=%%~v"
if not defined VERSION (
  echo spanwright: !JAVA! does not tell its version 1>&2
  exit /b 2
)
for /f "tokens=1 delims=.-+" %%m in ("!VERSION!") do set "MAJOR=%%m"
if !MAJOR! LSS 17 (
  echo spanwright: !JAVA! is version !VERSION!; 17 or newer is needed 1>&2
  exit /b 2
)

set "WHY="
if not exist "%JAR%" (
  set "WHY=there is no jar yet"
) else (
  powershell -NoProfile -Command "$t=(Get-Item $env:JAR).LastWriteTime; $n=Get-ChildItem -Recurse -File -ErrorAction SilentlyContinue \"$env:HOME_DIR\pom.xml\",\"$env:HOME_DIR\*\pom.xml\",\"$env:HOME_DIR\calc-core\src\main\",\"$env:HOME_DIR\kernel\src\main\",\"$env:HOME_DIR\notebooks\src\main\" | Where-Object { $_.LastWriteTime -gt $t } | Select-Object -First 1; if ($n) { exit 1 }"
  if errorlevel 1 set "WHY=a source is newer than the jar"
)
if defined WHY (
  set "MAVEN=mvn"
  if defined MAVEN_HOME set "MAVEN=%MAVEN_HOME%\bin\mvn"
  where "!MAVEN!" >nul 2>nul
  if errorlevel 1 if not exist "!MAVEN!.cmd" (
    echo spanwright: !WHY!, and no mvn found to build it. Install Maven 3.6.3 or newer 1>&2
    exit /b 2
  )
  echo spanwright: !WHY!; building it, about a minute ... 1>&2
  pushd "%HOME_DIR%"
  call "!MAVEN!" -q -B -DskipTests package 1>&2
  if errorlevel 1 (
    popd
    echo spanwright: the build failed 1>&2
    exit /b 2
  )
  popd
)

"!JAVA!" -XX:+IgnoreUnrecognizedVMOptions -XX:+UseSerialGC -Xss4m -XX:MaxRAMPercentage=50 -Djava.awt.headless=true -Dfile.encoding=UTF-8 "-Dspanwright.notebooks=%HOME_DIR%\notebooks" -jar "%JAR%" %*
exit /b %errorlevel%
