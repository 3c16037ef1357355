namespace ElbowAssist.Exchange.Dicom.Format;

/// <summary>Value representations of PS3.5 section 6.2.</summary>
internal enum Vr
{
    AE, AS, AT, CS, DA, DS, DT, FD, FL, IS, LO, LT, OB, OD, OF, OL, OV, OW, PN, SH, SL, SQ, SS, ST, SV, TM, UC, UI, UL,
    UN, UR, US, UT, UV,
}

/// <summary>What PS3.5 sections 6.2 and 7.1.2 say of each value representation.</summary>
internal static class VrRules
{
    /// <summary>True if an explicit header holds two reserved bytes and a 32-bit length.</summary>
    public static bool HasLongLength(this Vr vr) => vr is Vr.OB or Vr.OD or Vr.OF or Vr.OL or Vr.OV or Vr.OW or Vr.SQ
        or Vr.SV or Vr.UC or Vr.UN or Vr.UR or Vr.UT or Vr.UV;

    /// <summary>True for character strings, whose values several backslashes may separate.</summary>
    public static bool IsText(this Vr vr) => vr is Vr.AE or Vr.AS or Vr.CS or Vr.DA or Vr.DS or Vr.DT or Vr.IS or Vr.LO
        or Vr.LT or Vr.PN or Vr.SH or Vr.ST or Vr.TM or Vr.UC or Vr.UI or Vr.UR or Vr.UT;

    /// <summary>True for text written in the declared character set.</summary>
    public static bool UsesCharacterSet(this Vr vr) =>
        vr is Vr.LO or Vr.LT or Vr.PN or Vr.SH or Vr.ST or Vr.UC or Vr.UT;

    /// <summary>True for text in which a backslash separates values.</summary>
    public static bool IsMultiValued(this Vr vr) => vr.IsText() && vr is not (Vr.LT or Vr.ST or Vr.UT or Vr.UR);

    /// <summary>The byte that makes a value even in length.</summary>
    public static byte Padding(this Vr vr) => vr.IsText() && vr != Vr.UI ? (byte)' ' : (byte)0;

    /// <summary>The representation written as two letters, or false.</summary>
    public static bool TryParse(byte first, byte second, out Vr vr)
    {
        vr = default;
        return first is >= (byte)'A' and <= (byte)'Z' && second is >= (byte)'A' and <= (byte)'Z' &&
            Enum.TryParse(new string([(char)first, (char)second]), out vr);
    }
}
