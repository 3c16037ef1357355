using System.Globalization;
using System.Numerics;
using System.Security.Cryptography;
using System.Text;

namespace ElbowAssist.Exchange.Dicom.Format;

/// <summary>Unique identifiers of the standard (PS3.6 annex A) and of our own.</summary>
internal static class Uids
{
    public const string ComputedRadiography = "1.2.840.10008.5.1.4.1.1.1";
    public const string DigitalXRayForPresentation = "1.2.840.10008.5.1.4.1.1.1.1";
    public const string DigitalXRayForProcessing = "1.2.840.10008.5.1.4.1.1.1.1.1";
    public const string SecondaryCapture = "1.2.840.10008.5.1.4.1.1.7";
    public const string PresentationState = "1.2.840.10008.5.1.4.1.1.11.1";
    public const string EnhancedReport = "1.2.840.10008.5.1.4.1.1.88.22";
    public const string ComprehensiveReport = "1.2.840.10008.5.1.4.1.1.88.33";
    public const string Comprehensive3DReport = "1.2.840.10008.5.1.4.1.1.88.34";

    /// <summary>Names this writer in the files it makes; derived once from a random UUID.</summary>
    public const string Implementation = "2.25.250741906297434620583174112367481790113";

    /// <summary>
    /// A UID below 2.25 (PS3.5 B.2) made from a name: the same name always gives the same UID, so that a repeated
    /// export is the same object and not a second one.
    /// </summary>
    public static string FromName(params string[] parts)
    {
        var hash = SHA256.HashData(Encoding.UTF8.GetBytes(string.Join('\n', parts)));
        hash[6] = (byte)((hash[6] & 0x0F) | 0x80);
        hash[8] = (byte)((hash[8] & 0x3F) | 0x80);
        var number = new BigInteger(hash.AsSpan(0, 16), isUnsigned: true, isBigEndian: true);
        return "2.25." + number.ToString(CultureInfo.InvariantCulture);
    }

    /// <summary>True for digits and dots, at most 64 characters, no empty component and no leading zero (PS3.5 9.1).</summary>
    public static bool IsValid(string? uid) =>
        uid is { Length: > 0 and <= 64 } &&
        uid.Split('.').All(c => c.Length > 0 && c.All(char.IsAsciiDigit) && (c.Length == 1 || c[0] != '0'));

    /// <summary>A UID of the standard as it is; anything else could identify someone and is not repeated.</summary>
    public static string ForMessage(string? uid) =>
        IsValid(uid) && uid!.StartsWith("1.2.840.10008.", StringComparison.Ordinal) ? uid : "(none of the standard)";
}
