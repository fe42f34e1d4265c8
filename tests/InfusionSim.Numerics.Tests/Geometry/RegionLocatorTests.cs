using InfusionSim.Numerics.Geometry;
using InfusionSim.Numerics.Tests.Grids;

namespace InfusionSim.Numerics.Tests.Geometry;

public class RegionLocatorTests
{
    private static readonly RegionLocator Frame = new(new Region(Shapes.Ring(0, 0, 10, 0, 10, 8, 0, 8), [Shapes.Ring(4, 3, 6, 3, 6, 5, 4, 5)]));

    [Theory]
    [InlineData(1, 1, true)]
    [InlineData(5, 4, false)]
    [InlineData(11, 4, false)]
    [InlineData(0, 4, true)]
    [InlineData(4, 4, true)]
    [InlineData(10, 8, true)]
    public void Contains_Place_CountsTheEdgeAsInside(double x, double y, bool inside) => Frame.Contains(new(x, y)).ShouldBe(inside);

    [Theory]
    [InlineData(1, 4, 1, 0, 4)]
    [InlineData(3.5, 4, 0.5, 4, 4)]
    [InlineData(5, 4.25, 0.75, 5, 5)]
    [InlineData(13, 12, 5, 10, 8)]
    [InlineData(0, 2, 0, 0, 2)]
    public void NearestOnEdge_Place_IsAtTheDistance(double x, double y, double distance, double nearestX, double nearestY)
    {
        Frame.DistanceToEdge(new(x, y)).ShouldBe(distance, 1e-14);
        Frame.NearestOnEdge(new(x, y)).DistanceTo(new(nearestX, nearestY)).ShouldBeLessThan(1e-14);
    }
}
