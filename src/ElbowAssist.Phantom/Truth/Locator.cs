using ElbowAssist.Geometry;

namespace ElbowAssist.Phantom.Truth;

/// <summary>
/// Four points that give place, size, turn and mirror image of an elbow on a film, in pixels; they may lie off the film.
/// </summary>
/// <param name="Shaft">Humeral shaft axis, 2 W above the roof of the olecranon fossa.</param>
/// <param name="Joint">Centre of the flexion axis between capitellum and trochlea.</param>
/// <param name="Forearm">Midpoint between radius and ulna, 4 W distal to the joint.</param>
/// <param name="Mark">Olecranon tip on a lateral film, tip of the medial epicondyle on any other.</param>
public sealed record Locator(Point Shaft, Point Joint, Point Forearm, Point Mark);
