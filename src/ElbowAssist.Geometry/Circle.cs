namespace ElbowAssist.Geometry;

/// <summary>A circle, in the unit of its centre.</summary>
/// <param name="Centre">Centre.</param>
/// <param name="Radius">Radius, positive.</param>
public readonly record struct Circle(Point Centre, double Radius);
