using System.Runtime.InteropServices;
using Microsoft.ML.OnnxRuntime;

namespace ElbowAssist.Models.Inference;

/// <summary>
/// The runtime's Linux build keeps an identifier of the machine and would tell its maker of its use. It is told not to,
/// before its library is loaded and once more afterwards: nothing leaves this machine.
/// </summary>
internal static class RuntimeReports
{
    public static void TurnOff()
    {
        if (OperatingSystem.IsLinux())
        {
            // The runtime reads the native environment, which Environment.SetEnvironmentVariable leaves alone.
            _ = SetNative("ORT_DISABLE_TELEMETRY\0"u8.ToArray(), "1\0"u8.ToArray(), 1);
        }

        OrtEnv.Instance().DisableTelemetryEvents();
    }

    [DllImport("libc", EntryPoint = "setenv")]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int SetNative(byte[] name, byte[] value, int overwrite);
}
