using System.Diagnostics;
using System.Globalization;
using ElbowAssist.Exchange.Dicom.Films;
using ElbowAssist.Exchange.Dicom.Format;
using ElbowAssist.Exchange.Dicom.Presentation;
using ElbowAssist.Exchange.Dicom.Reports;
using ElbowAssist.Exchange.Tests.Dicom.Support;
using Xunit.Abstractions;
using SampleFilm = ElbowAssist.Exchange.Tests.Dicom.Support.SampleFilm;

namespace ElbowAssist.Exchange.Tests.Dicom;

/// <summary>
/// Damaged files are read or turned away with a sentence: no other exception, no hang, no more memory than the limits
/// allow. tools/fuzzing/dicom runs many; the default suits continuous integration.
/// </summary>
public sealed class MutatedFileTests(ITestOutputHelper output)
{
    private static readonly DicomLimits Limits = new() { MaxBytes = 4 * 1024 * 1024, MaxPixels = 500_000 };
    private static readonly TimeSpan Hang = TimeSpan.FromSeconds(2);

    [ToolFact("dcmconv", "dcmcrle", "dcmcjpeg", "dcmcjpls", "gdcmconv")]
    public void EveryMutatedFile_IsReadOrTurnedAway()
    {
        var count = Setting("ELBOWASSIST_MUTATIONS", 2000);
        var first = Setting("ELBOWASSIST_MUTATION_SEED", 1);
        var seeds = Seeds();
        var (read, turnedAway, slowest, most) = (0, 0, TimeSpan.Zero, 0L);
        for (var seed = first; seed < first + count; seed++)
        {
            var random = new Random(seed);
            var mutated = Mutation.Of(seeds[seed % seeds.Count], random);
            var (accepted, time, memory) = Send(mutated, seed);
            if (time > Hang)
            {
                // Another process may have held the machine: it counts only if it happens again.
                time = Send(mutated, seed).Time;
            }

            Assert.True(time <= Hang, $"seed {seed} took {time}");
            Assert.True(memory <= 4L * Limits.MaxBytes, $"seed {seed} took {memory} bytes");
            (read, turnedAway) = accepted ? (read + 1, turnedAway) : (read, turnedAway + 1);
            (slowest, most) = (time > slowest ? time : slowest, Math.Max(memory, most));
        }

        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{count} files: {read} read, {turnedAway} turned away; slowest {slowest.TotalMilliseconds:0} ms; most memory allocated for one file {most / 1024.0 / 1024:0.0} MiB"));
        Assert.True(read > 0 && turnedAway > 0, "the mutations must be neither harmless nor hopeless");
    }

    private static (bool Accepted, TimeSpan Time, long Memory) Send(byte[] file, int seed)
    {
        var before = GC.GetAllocatedBytesForCurrentThread();
        var watch = Stopwatch.StartNew();
        var accepted = true;
        try
        {
            if (DicomFile.Parse(file, Limits).Dataset.Text(Tag.SopClassUid) is Uids.Comprehensive3DReport)
            {
                StructuredReportReader.Read(file, Limits);
            }
            else
            {
                new DicomFilmReader(new ImageLibrary(), Limits).Read(file);
            }
        }
        catch (DicomFormatException e)
        {
            accepted = false;
            Assert.DoesNotContain("PHANTOM", e.Message, StringComparison.Ordinal);
        }
        catch (Exception e)
        {
            throw new InvalidOperationException($"Seed {seed} ended with {e.GetType().Name}.", e);
        }

        return (accepted, watch.Elapsed, GC.GetAllocatedBytesForCurrentThread() - before);
    }

    private static List<byte[]> Seeds()
    {
        using var scratch = new Scratch();
        var film = new SampleFilm
        {
            With = b => b.Decimal(Tag.WindowCenter, 2000).Decimal(Tag.WindowWidth, 3000)
                .Text(Tag.ShutterShape, "POLYGONAL").Integer(Tag.VerticesOfThePolygonalShutter, 1, 1, 47, 1, 47, 61, 1, 61),
        }.File();
        var plain = scratch.Write("plain.dcm", film);
        byte[] Coded(string program, params string[] options) => CodedFilm(plain, program, options);

        byte[] CodedFilm(string from, string program, params string[] options)
        {
            Tool.Run(program, [.. options, from, scratch["coded.dcm"]]);
            return File.ReadAllBytes(scratch["coded.dcm"]);
        }

        var source = new DicomFilmReader().Read(film).Source;
        var made = new DateTimeOffset(2026, 4, 1, 10, 17, 0, TimeSpan.Zero);
        return
        [
            film,
            Coded("dcmconv", "+ti"),
            Coded("dcmconv", "+td"),
            Coded("dcmcrle"),
            Coded("dcmcjpeg", "+e1"),
            Coded("dcmcjpeg", "+el", "+sv", "4"),
            Coded("dcmcjpls", "+el"),
            Coded("gdcmconv", "--j2k"),
            CodedFilm(scratch.Write("grey.dcm", new SampleFilm { BitsAllocated = 8, BitsStored = 8, Width = 64 }.File()), "dcmcjpeg", "+eb"),
            StructuredReport.Write(SampleReading.Of(1, 61, 47), source, new ReportOptions(made)),
            PresentationState.Write(SampleReading.Of(1, 61, 47), source, made),
        ];
    }

    private static int Setting(string name, int otherwise) =>
        int.TryParse(Environment.GetEnvironmentVariable(name), NumberStyles.None, CultureInfo.InvariantCulture, out var value) ? value : otherwise;
}
