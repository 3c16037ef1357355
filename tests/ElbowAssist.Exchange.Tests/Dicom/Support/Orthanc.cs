using System.Diagnostics;
using System.Net;
using System.Net.Sockets;
using System.Text.Json;

namespace ElbowAssist.Exchange.Tests.Dicom.Support;

/// <summary>An Orthanc archive on loopback with its DICOMweb plug-in, gone after the test.</summary>
internal sealed class Orthanc : IDisposable
{
    private readonly Scratch scratch = new();
    private readonly Process process;

    private Orthanc(int port)
    {
        Root = new Uri($"http://127.0.0.1:{port}/dicom-web");
        File.WriteAllText(scratch["orthanc.json"], JsonSerializer.Serialize(new Dictionary<string, object>
        {
            ["Name"] = "Test",
            ["StorageDirectory"] = scratch["storage"],
            ["IndexDirectory"] = scratch["storage"],
            ["HttpPort"] = port,
            ["RemoteAccessAllowed"] = false,
            ["AuthenticationEnabled"] = false,
            ["DicomServerEnabled"] = false,
            ["Plugins"] = new[] { "/usr/share/orthanc/plugins/libOrthancDicomWeb.so" },
            ["DicomWeb"] = new Dictionary<string, object> { ["Enable"] = true, ["Root"] = "/dicom-web/" },
        }));
        var start = new ProcessStartInfo(Tool.Find("Orthanc")!, scratch["orthanc.json"])
        {
            RedirectStandardError = true,
            RedirectStandardOutput = true,
            UseShellExecute = false,
        };
        process = Process.Start(start)!;
        process.OutputDataReceived += (_, _) => { };
        process.ErrorDataReceived += (_, _) => { };
        process.BeginOutputReadLine();
        process.BeginErrorReadLine();
    }

    /// <summary>Address of its DICOMweb service.</summary>
    public Uri Root { get; }

    public static async Task<Orthanc> StartAsync(HttpClient http)
    {
        var orthanc = new Orthanc(FreePort());
        for (var i = 0; i < 600; i++)
        {
            try
            {
                using var answer = await http.GetAsync(new Uri(orthanc.Root + "/studies"));
                if (answer.IsSuccessStatusCode)
                {
                    return orthanc;
                }
            }
            catch (HttpRequestException)
            {
                // Not up yet.
            }

            await Task.Delay(100);
        }

        orthanc.Dispose();
        throw new InvalidOperationException("Orthanc did not start within a minute.");
    }

    public void Dispose()
    {
        if (!process.HasExited)
        {
            process.Kill();
            process.WaitForExit();
        }

        process.Dispose();
        scratch.Dispose();
    }

    private static int FreePort()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }
}
