using System.Globalization;
using ElbowAssist.Anatomy;
using ElbowAssist.Exchange.Dicom.Format;
using ElbowAssist.Reading;

namespace ElbowAssist.Exchange.Dicom.Films;

/// <summary>Age in completed months and sex; the birth date comes before the stated age, which is often rounded.</summary>
internal static class PatientReader
{
    public static Patient Read(DicomDataset film, List<Reason> conflicts)
    {
        var stated = StatedAgeMonths(film.Text(Tag.PatientAge));
        var counted = CountedAgeMonths(film);
        if (stated is { } s && counted is { } c && Math.Abs(s - c) > 12)
        {
            conflicts.Add(new Reason("age-contradicted", "The file states an age that its birth date contradicts; no age was taken from it."));
            (stated, counted) = (null, null);
        }

        var sex = film.Text(Tag.PatientSex) switch
        {
            "F" => Sex.Female,
            "M" => Sex.Male,
            _ => (Sex?)null,
        };
        return new(counted ?? stated, sex);
    }

    /// <summary>Age string of PS3.5 6.2: three digits and D, W, M or Y.</summary>
    private static int? StatedAgeMonths(string? age)
    {
        if (age is not { Length: 4 } || !int.TryParse(age[..3], NumberStyles.None, CultureInfo.InvariantCulture, out var number))
        {
            return null;
        }

        return age[3] switch
        {
            'D' => (int)(number / 30.4375),
            'W' => (int)(number * 7 / 30.4375),
            'M' => number,
            'Y' => number * 12,
            _ => null,
        };
    }

    private static int? CountedAgeMonths(DicomDataset film)
    {
        if (Date(film, Tag.PatientBirthDate) is not { } born ||
            (Date(film, Tag.AcquisitionDate) ?? Date(film, Tag.ContentDate) ?? Date(film, Tag.StudyDate)) is not { } taken)
        {
            return null;
        }

        var months = ((taken.Year - born.Year) * 12) + taken.Month - born.Month - (taken.Day < born.Day ? 1 : 0);
        return months is >= 0 and <= 130 * 12 ? months : null;
    }

    private static DateOnly? Date(DicomDataset film, Tag tag) =>
        DateOnly.TryParseExact(film.Text(tag), "yyyyMMdd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var date) ? date : null;
}
