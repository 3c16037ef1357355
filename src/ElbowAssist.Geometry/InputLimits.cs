namespace ElbowAssist.Geometry;

/// <summary>
/// How much of a hostile or damaged input is taken in, all in one place: whatever reads files, answers or requests takes its
/// defaults from here. What lies beyond a limit is turned away in a sentence. Where a line names no source, the limit is
/// common practice: well above what the task needs, well below what hurts the machine.
/// </summary>
internal static class InputLimits
{
    /// <summary>Bytes of a film's file: uncompressed, the largest film below takes half of it with 16 bits.</summary>
    public const int FilmBytes = 256 << 20;

    /// <summary>Pixels of a film: a 35 × 43 cm detector at 0.1 mm has 15 million; the rest is room for scanned film.</summary>
    public const int FilmPixels = 64_000_000;

    /// <summary>Bytes of a decoded film with all its channels: the largest film in colour, or with 16 bits twice over.</summary>
    public const int DecodedBytes = 256 << 20;

    /// <summary>Columns or rows that a caller may state: DICOM holds them in 16 bits (PS3.3, C.7.6.3).</summary>
    public const int FilmSide = 65_535;

    /// <summary>Pixels a place may lie from the corner of a film: fifteen times the longest side.</summary>
    public const double Coordinate = 1_000_000;

    /// <summary>Nesting of DICOM sequences: the content of a measurement report nests less than ten deep.</summary>
    public const int DicomDepth = 24;

    /// <summary>Elements, items and fragments of a DICOM file: films have hundreds, a report of every landmark some thousands.</summary>
    public const int DicomElements = 200_000;

    /// <summary>Bytes of one DICOM value that is read as numbers: 128 thousand of them, where a film's are a handful.</summary>
    public const int DicomValueBytes = 1 << 20;

    /// <summary>Bytes of a JSON file: a reading is some 50 kB, a COCO file of ten thousand films some 30 MB.</summary>
    public const int JsonBytes = 64 << 20;

    /// <summary>Nesting of a JSON file: ours nest less than ten deep.</summary>
    public const int JsonDepth = 32;

    /// <summary>Bytes of a model's manifest: with the tables of its calibration ours take 70 kB.</summary>
    public const long ManifestBytes = 16 << 20;

    /// <summary>Bytes of a network: ours take 7 MB, a large one of somebody else a few hundred.</summary>
    public const long NetworkBytes = 512 << 20;

    /// <summary>Bytes of a surface, and triangles of it: a fine scan of a long bone has some hundred thousand of 50 bytes.</summary>
    public const long SurfaceBytes = 200_000_000;

    /// <inheritdoc cref="SurfaceBytes"/>
    public const int SurfaceTriangles = 2_000_000;

    /// <summary>Bytes of a request: a film of usual size fits several times.</summary>
    public const long RequestBytes = 64 << 20;

    /// <summary>Bytes of a request to measure: all landmarks with their spreads take 20 kB.</summary>
    public const long LandmarkBytes = 1 << 20;

    /// <summary>Films of a study in one request: two views of both elbows, three times over.</summary>
    public const int StudyFilms = 12;

    /// <summary>Characters of a multipart boundary (RFC 2046, section 5.1.1).</summary>
    public const int Boundary = 70;

    /// <summary>Films of a case file: a lesson.</summary>
    public const int CaseFilms = 20;

    /// <summary>Lines brought in at once: a class.</summary>
    public const int CaseLines = 200;

    /// <summary>Bytes of a result kept or written by a worker: the line of a film takes 30 kB.</summary>
    public const int ResultBytes = 16 << 20;

    /// <summary>Whether a place can be one on or beside a film.</summary>
    public static bool Holds(Point place) => Math.Abs(place.X) <= Coordinate && Math.Abs(place.Y) <= Coordinate;

    /// <summary>Whether a spread can be one of such places.</summary>
    public static bool Holds(Covariance spread) => spread.XX <= Coordinate * Coordinate && spread.YY <= Coordinate * Coordinate;
}
