namespace ElbowAssist.Reading;

/// <summary>A program and its version.</summary>
public sealed record ToolIdentity(string Name, string Version);

/// <summary>A model and the SHA-256 (lower-case hex) of its ONNX file.</summary>
public sealed record ModelIdentity(string Name, string Version, string Sha256);
