namespace ElbowAssist.Reading;

/// <summary>The caution on every screen, report and file.</summary>
public static class Caution
{
    /// <summary>Last sentence of every reading.</summary>
    public const string LastSentence = "Nothing here excludes a fracture.";

    /// <summary>The whole caution.</summary>
    public const string Text =
        "Not a medical device. Not validated on patients. For a second look only; not for primary reading on an " +
        "uncalibrated display. The reader decides; follow local protocol and licensed practice. " + LastSentence;
}
