@echo off
rem Builds Fairlead when there is something to build, then runs it. Needs only the .NET SDK.
setlocal
set DOTNET_CLI_TELEMETRY_OPTOUT=1
set DOTNET_NOLOGO=1
where dotnet >nul 2>nul || (echo Fairlead needs the .NET SDK: https://dotnet.microsoft.com/download 1>&2 & exit /b 3)
pushd "%~dp0"
dotnet build src\Fairlead.Cli -c Release -v q --nologo > "%TEMP%\fairlead-build.log" 2>&1 || (type "%TEMP%\fairlead-build.log" 1>&2 & popd & exit /b 3)
popd
dotnet "%~dp0artifacts\bin\Fairlead.Cli\release\fairlead.dll" %*
