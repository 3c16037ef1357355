namespace ElbowAssist.Geometry.Tests;

public sealed class VectorTests
{
    [Fact]
    public void Text_IsBothComponents() => Assert.Equal("(1.5, -2)", new Vector(1.5, -2).ToString());
}
