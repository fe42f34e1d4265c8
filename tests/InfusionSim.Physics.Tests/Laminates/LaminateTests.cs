using InfusionSim.Physics.Laminates;
using InfusionSim.Physics.Panels;

namespace InfusionSim.Physics.Tests.Laminates;

public sealed class LaminateTests
{
    private static readonly FibreWeight Glass = new(0.6, 2560, 6);

    [Fact]
    public void Laminate_OfPliesOfTwoFibres_AddsThemUp()
    {
        FibreWeight carbon = new(0.3, 1780, 4);

        Laminate both = Laminate.Of([Glass, carbon], 0.5, 1100), glass = Laminate.Of([Glass], 0.5, 1100), other = Laminate.Of([carbon], 0.5, 1100);

        both.Thickness.ShouldBe(glass.Thickness + other.Thickness, 1e-15);
        both.FibreMass.ShouldBe(glass.FibreMass + other.FibreMass, 1e-15);
        both.ResinMass.ShouldBe(glass.ResinMass + other.ResinMass, 1e-15);
    }

    [Fact]
    public void Laminate_SixPliesNamedOneByOne_IsThatOfACountOfSix() =>
        Laminate.Of([.. Enumerable.Repeat(Glass with { Count = 1 }, 6)], 0.55, 1150).Mass.ShouldBe(Laminate.Of([Glass], 0.55, 1150).Mass, 1e-14);

    [Fact]
    public void Laminate_OfAZone_FillsThePoresOfItsOwnThickness()
    {
        Zone zone = new("skin", null, 0.003, 0.5, new Permeability(1e-10, 1e-10, 1e-12, 0)) { Fibres = [Glass] };

        Laminate laminate = Laminate.Of(zone, 1100).ShouldNotBeNull();

        laminate.Thickness.ShouldBe(0.003);
        laminate.FibreMass.ShouldBe(3.6, 1e-15);
        laminate.ResinMass.ShouldBe(1.65, 1e-15);
    }

    [Fact]
    public void Laminate_OfAZoneWithoutFibreWeights_IsNotKnown() =>
        Laminate.Of(new Zone("skin", null, 0.003, 0.5, new Permeability(1e-10, 1e-10, 1e-12, 0)), 1100).ShouldBeNull();

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(double.NaN)]
    public void Ply_FibreVolumeFractionThatLeavesNoLaminate_IsRefused(double fraction) =>
        Should.Throw<ArgumentOutOfRangeException>(() => Glass.PlyThickness(fraction));

    [Theory]
    [InlineData(0.1)]
    [InlineData(0.5)]
    [InlineData(0.9)]
    public void Fraction_ByWeightAndBack_IsTheSame(double byVolume) =>
        FibreFraction.ByVolume(FibreFraction.ByWeight(byVolume, 1780, 1150), 1780, 1150).ShouldBe(byVolume, 1e-15);
}
