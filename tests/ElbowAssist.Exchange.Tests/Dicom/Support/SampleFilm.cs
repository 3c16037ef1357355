using System.Buffers.Binary;
using System.Text;
using ElbowAssist.Exchange.Dicom.Format;

namespace ElbowAssist.Exchange.Tests.Dicom.Support;

/// <summary>An invented film as an object of the DX for presentation class, with a pattern that exercises the codecs.</summary>
internal sealed record SampleFilm
{
    public int Width { get; init; } = 61;

    public int Height { get; init; } = 47;

    public int BitsAllocated { get; init; } = 16;

    public int BitsStored { get; init; } = 12;

    public bool Signed { get; init; }

    public string Photometric { get; init; } = "MONOCHROME2";

    public int Seed { get; init; } = 1;

    /// <summary>Further or replacing attributes.</summary>
    public Action<DatasetBuilder> With { get; init; } = _ => { };

    /// <summary>Stored values: a ramp, a flat area, noise, and both extremes.</summary>
    public int[] Values()
    {
        var random = new Random(Seed);
        var (low, high) = Signed ? (-(1 << (BitsStored - 1)), (1 << (BitsStored - 1)) - 1) : (0, (1 << BitsStored) - 1);
        var values = new int[Width * Height];
        for (var y = 0; y < Height; y++)
        {
            for (var x = 0; x < Width; x++)
            {
                var ramp = low + ((high - low) * ((2 * x) + y) / ((2 * Width) + Height));
                values[(y * Width) + x] = y < Height / 4 ? low + ((high - low) / 3)
                    : y < Height / 2 ? ramp
                    : y < 3 * Height / 4 ? Math.Clamp(ramp + random.Next(-40, 41), low, high)
                    : random.Next(low, high + 1);
            }
        }

        (values[0], values[1], values[^1]) = (low, high, high);
        return values;
    }

    public DicomDataset Dataset()
    {
        var inverse = Photometric == "MONOCHROME1";
        var builder = new DatasetBuilder(Encoding.UTF8)
            .Text(Tag.SpecificCharacterSet, CharacterSets.Utf8)
            .Text(Tag.SopClassUid, Uids.DigitalXRayForPresentation)
            .Text(Tag.SopInstanceUid, Uids.FromName("sample", "image", Seed.ToString(System.Globalization.CultureInfo.InvariantCulture)))
            .Text(Tag.StudyInstanceUid, Uids.FromName("sample", "study"))
            .Text(Tag.SeriesInstanceUid, Uids.FromName("sample", "series"))
            .Text(Tag.StudyDate, "20260401").Text(Tag.ContentDate, "20260401").Text(Tag.AcquisitionDate, "20260401")
            .Text(Tag.StudyTime, "101500").Text(Tag.ContentTime, "101600")
            .Text(Tag.AccessionNumber, "A-17").Text(Tag.Modality, "DX").Text(Tag.PresentationIntentType, "FOR PRESENTATION")
            .Text(Tag.Manufacturer, "Phantom").Empty(Tag.ReferringPhysicianName)
            .Text(Tag.PatientName, "Müster^Phantom").Text(Tag.PatientId, "PHANTOM-001")
            .Text(Tag.PatientBirthDate, "20190315").Text(Tag.PatientSex, "F").Text(Tag.PatientAge, "007Y")
            .Text(Tag.BodyPartExamined, "ELBOW").Text(Tag.ViewPosition, "LL").Text(Tag.ImageLaterality, "L")
            .Text(Tag.StudyId, "1").Integer(Tag.SeriesNumber, 1).Integer(Tag.InstanceNumber, 1).Empty(Tag.PatientOrientation)
            .UInt16(Tag.SamplesPerPixel, 1).Text(Tag.PhotometricInterpretation, Photometric)
            .UInt16(Tag.Rows, Height).UInt16(Tag.Columns, Width)
            .UInt16(Tag.BitsAllocated, BitsAllocated).UInt16(Tag.BitsStored, BitsStored).UInt16(Tag.HighBit, BitsStored - 1)
            .UInt16(Tag.PixelRepresentation, Signed ? 1 : 0)
            .Decimal(Tag.ImagerPixelSpacing, 0.15, 0.15).Text(Tag.BurnedInAnnotation, "NO")
            .Text(Tag.PixelIntensityRelationship, "LOG").Bytes(Tag.PixelIntensityRelationshipSign, [1, 0])
            .Decimal(Tag.RescaleIntercept, 0).Decimal(Tag.RescaleSlope, 1).Text(Tag.RescaleType, "US")
            .Text(Tag.LossyImageCompression, "00")
            .Text(Tag.PresentationLutShape, inverse ? "INVERSE" : "IDENTITY")
            .Bytes(Tag.PixelData, BitsAllocated == 8 ? Vr.OB : Vr.OW, PixelBytes());
        With(builder);
        return builder.Build();
    }

    public byte[] File() => DicomFile.Write(Dataset());

    private byte[] PixelBytes()
    {
        var values = Values();
        var mask = (1 << BitsStored) - 1;
        var bytes = new byte[values.Length * BitsAllocated / 8];
        for (var i = 0; i < values.Length; i++)
        {
            if (BitsAllocated == 8)
            {
                bytes[i] = (byte)(values[i] & mask);
            }
            else
            {
                BinaryPrimitives.WriteUInt16LittleEndian(bytes.AsSpan(2 * i), (ushort)(values[i] & mask));
            }
        }

        return bytes;
    }
}
