using System.Text;
using ElbowAssist.Exchange.Dicom.Format;

namespace ElbowAssist.Exchange.Dicom.Codes;

/// <summary>A coded concept: value (at most 16 characters), scheme, meaning (at most 64).</summary>
internal sealed record Code(string Value, string Scheme, string Meaning)
{
    public DicomDataset Encode(Encoding encoding) => new DatasetBuilder(encoding)
        .Text(Tag.CodeValue, Value)
        .Text(Tag.CodingSchemeDesignator, Scheme)
        .Text(Tag.CodeMeaning, AsciiText.Cut(Meaning, 64))
        .Build();

    /// <summary>The first code of a sequence, or null.</summary>
    public static Code? Read(DicomDataset dataset, Tag sequence) =>
        dataset.Items(sequence) is [var item, ..] && item.Text(Tag.CodeValue) is { } value &&
        item.Text(Tag.CodingSchemeDesignator) is { } scheme
            ? new(value, scheme, item.Text(Tag.CodeMeaning) ?? "")
            : null;

    /// <summary>Codes are the same if value and scheme are; the meaning is for people.</summary>
    public bool Matches(Code? other) => other is not null && Value == other.Value && Scheme == other.Scheme;
}
