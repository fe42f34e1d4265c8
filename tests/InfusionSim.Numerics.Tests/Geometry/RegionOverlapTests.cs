using InfusionSim.Numerics.Geometry;

namespace InfusionSim.Numerics.Tests.Geometry;

public sealed class RegionOverlapTests
{
    private static Ring Rectangle(double left, double bottom, double right, double top) =>
        new([new(left, bottom), new(right, bottom), new(right, top), new(left, top)]);

    private static readonly Region Plate = new(Rectangle(0, 0, 2, 1), [Rectangle(0.5, 0.25, 1, 0.75)]);

    [Theory]
    [InlineData(0, 0, 2, 1, 0.875)]
    [InlineData(1, 0, 3, 1, 0.5)]
    [InlineData(1.2, 0.2, 1.8, 0.8, 1)]
    [InlineData(0.5, 0.25, 1, 0.75, 0)]
    [InlineData(2, 0, 3, 1, 0)]
    [InlineData(5, 5, 6, 6, 0)]
    public void ShareInside_Rectangle_IsTheShareOnTheCloth(double left, double bottom, double right, double top, double share) =>
        RegionOverlap.ShareInside(Plate, Rectangle(left, bottom, right, top)).ShouldBe(share, 1e-12);

    [Fact]
    public void ShareInside_RingOfManyCorners_IsSampled()
    {
        var circle = new Ring(
            [.. Enumerable.Range(0, 600).Select(k => new Point2(2 + 0.4 * Math.Cos(k * Math.PI / 300), 0.5 + 0.4 * Math.Sin(k * Math.PI / 300)))]);

        RegionOverlap.ShareInside(Plate, circle).ShouldBe(0.5, 0.01);
    }
}
