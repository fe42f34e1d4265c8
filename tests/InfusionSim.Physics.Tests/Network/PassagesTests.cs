using CsCheck;
using InfusionSim.Physics.Network;

namespace InfusionSim.Physics.Tests.Network;

public sealed class PassagesTests
{
    private static readonly Gen<double> Side = Gen.Double[0.1e-3, 20e-3];

    [Fact]
    public void Duct_TurnedByARightAngle_ConductsAlike() =>
        Gen.Select(Side, Side).Sample((width, height) => Passages.Duct(width, height).ShouldBe(Passages.Duct(height, width), 1e-20));

    [Fact]
    public void Duct_ScaledInBothSides_ConductsWithTheSquare() =>
        Gen.Select(Side, Side, Gen.Double[0.1, 10]).Sample((width, height, scale) =>
            (Passages.Duct(scale * width, scale * height) / Passages.Duct(width, height)).ShouldBe(scale * scale, 1e-9 * scale * scale));

    [Fact]
    public void Duct_OfAnyHeight_ConductsLessThanTheSlot() =>
        Gen.Select(Side, Side).Sample((width, height) => Passages.Duct(width, height).ShouldBeLessThan(Passages.Slot(Math.Min(width, height))));

    [Fact]
    public void DuctInShort_FromTwoToOne_StaysNearTheSeries() =>
        Gen.Select(Side, Gen.Double[2, 50]).Sample((width, ratio) =>
            (Passages.DuctInShort(width, ratio * width) / Passages.Duct(width, ratio * width)).ShouldBe(1, 2e-3));

    [Fact]
    public void DuctInShort_BelowTwoToOne_IsRefused() => Should.Throw<ArgumentOutOfRangeException>(() => Passages.DuctInShort(2e-3, 3e-3));

    [Theory]
    [InlineData(0)]
    [InlineData(-1e-3)]
    public void Passages_WithoutWidth_AreRefused(double width)
    {
        Should.Throw<ArgumentOutOfRangeException>(() => Passages.Slot(width));
        Should.Throw<ArgumentOutOfRangeException>(() => Passages.Round(width));
        Should.Throw<ArgumentOutOfRangeException>(() => Passages.Duct(width, 1e-3));
        Should.Throw<ArgumentOutOfRangeException>(() => Passages.Grooves(width, 1e-3, 2e-3));
    }
}
