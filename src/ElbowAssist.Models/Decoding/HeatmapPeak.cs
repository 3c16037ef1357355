using ElbowAssist.Geometry;

namespace ElbowAssist.Models.Decoding;

/// <summary>What one heatmap says.</summary>
/// <param name="Position">The place, in continuous input pixels with (0,0) the top-left corner.</param>
/// <param name="Share">Share from 0 to 1 of the map that lies around the place.</param>
/// <param name="Second">The highest place apart from the first, in input pixels.</param>
/// <param name="SecondShare">Share of the map around the second place.</param>
/// <param name="Spread">Covariance of the map around the place, in squared input pixels.</param>
public readonly record struct HeatmapPeak(Point Position, double Share, Point Second, double SecondShare, Covariance Spread);
