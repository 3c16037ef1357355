using System.Runtime.InteropServices;
using ElbowAssist.Imaging.Native;
using OpenCvSharp;

namespace ElbowAssist.Imaging.Tests;

public sealed class NativeLibrariesTests
{
    [Fact]
    public void EveryNeededLibrary_CanBeLoadedAfterwards()
    {
        NativeLibraries.EnsureLoadable();
        var needed = NeededLibraries.Of(Path.Combine(AppContext.BaseDirectory, "libOpenCvSharpExtern.so"));
        Assert.Contains("libgtk-3.so.0", needed);
        Assert.All(needed, soname => Assert.True(NativeLibrary.TryLoad(soname, out _), soname));
    }

    [Fact]
    public void OpenCv_FiltersAndEncodes()
    {
        NativeLibraries.EnsureLoadable();
        using var image = new Mat(64, 48, MatType.CV_16UC1, new Scalar(1000));
        using var smaller = new Mat();
        Cv2.Resize(image, smaller, new Size(24, 32), 0, 0, InterpolationFlags.Area);
        Assert.Equal(1000, smaller.At<ushort>(5, 5));
        Cv2.ImEncode(".png", image, out var png);
        using var decoded = Cv2.ImDecode(png, ImreadModes.Unchanged);
        Assert.Equal(MatType.CV_16UC1, decoded.Type());
    }

    [Fact]
    public void StubLibrary_IsFoundByItsSoname()
    {
        const string soname = "libelbowassist-test-stub.so.7";
        Assert.False(NativeLibrary.TryLoad(soname, out _));
        using var file = PrivateMemoryFile.OnDisk("any-file-name.so", StubLibrary.Create(soname));
        Assert.True(NativeLibrary.TryLoad(file.Path, out _));
        Assert.True(NativeLibrary.TryLoad(soname, out _));
    }

    [Fact]
    public void StubLibrary_NeedsNothing()
    {
        using var file = PrivateMemoryFile.OnDisk("stub.so", StubLibrary.Create("libstub.so"));
        Assert.Empty(NeededLibraries.Of(file.Path));
    }

    [Fact]
    public void NeededLibraries_OfATextFile_IsEmpty()
    {
        using var file = PrivateMemoryFile.OnDisk("text.txt", "no library"u8);
        Assert.Empty(NeededLibraries.Of(file.Path));
    }
}
