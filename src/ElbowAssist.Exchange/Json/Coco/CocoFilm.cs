using ElbowAssist.Anatomy;
using ElbowAssist.Anatomy.Landmarks;

namespace ElbowAssist.Exchange.Json.Coco;

/// <summary>One film of a COCO keypoints file, already in the project's coordinates.</summary>
/// <param name="File">File name of the film.</param>
/// <param name="Width">Columns.</param>
/// <param name="Height">Rows.</param>
/// <param name="View">Lateral or AP.</param>
/// <param name="Landmarks">Landmarks; pixels of the original image with (0,0) the top-left corner of the top-left pixel.</param>
public sealed record CocoFilm(string File, int Width, int Height, View View, IReadOnlyList<Landmark> Landmarks);
