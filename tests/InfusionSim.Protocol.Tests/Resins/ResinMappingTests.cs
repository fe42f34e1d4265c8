using InfusionSim.Physics.Clock;
using InfusionSim.Protocol.Plans;
using InfusionSim.Protocol.V1;

namespace InfusionSim.Protocol.Tests.Resins;

public sealed class ResinMappingTests
{
    [Theory]
    [InlineData(Cards.Plain, null, 0.3)]
    [InlineData(Cards.Plain, 12.0, 0.3)]
    [InlineData(Cards.Table, null, 0.423181)]
    [InlineData(Cards.Table, 30.0, 0.215102)]
    [InlineData(Cards.Curve, 20.0, 0.3)]
    [InlineData(Cards.Rise, 25.0, 0.3)]
    [InlineData(Cards.Rise, 20.0, 0.423181)]
    [InlineData(Cards.Kinetics, 20.0, 0.423181)]
    public void Viscosity_AtOpening_IsThatOfTheShopsTemperature(string json, double? degC, double viscosity) =>
        ClockOf(Cards.On(json, degC)).ViscosityAt(0).ShouldBe(viscosity, 1e-6);

    [Fact]
    public void Viscosity_OfADualArrhenius_RisesAsTheTable() =>
        ClockOf(Cards.On(Cards.Rise, 25, card => card.MixToOpenMin = 10)).ViscosityAt(1200).ShouldBe(0.455026, 1e-6);

    [Fact]
    public void Viscosity_ThatDoubles_IsDoubleAfterThatTime()
    {
        DriveClock clock = ClockOf(Cards.On(Cards.Plain, 30, card => card.ViscosityRise = new ViscosityRise { DoublingMin = 40, AtDegC = 20 }));
        clock.ViscosityAt(1200).ShouldBe(0.6, 1e-9);
    }

    // μ₀ = 0.3 Pa·s at 25 °C by 50 kJ/mol; gel of the invented epoxy at 25 °C after 9805.8 s, at 40 °C after 3614.5 s.
    [Theory]
    [InlineData(25, 9805.8)]
    [InlineData(40, 3614.5)]
    public void Gel_ByKinetics_IsTheTable(double degC, double seconds) => ClockOf(Cards.On(Cards.Kinetics, degC)).GelTime.ShouldBe(seconds, 0.1);

    [Fact]
    public void Gel_StatedAndByKinetics_IsTheEarlier()
    {
        ClockOf(Cards.On(Cards.Kinetics, 25, card => card.GelTimeMin = 100)).GelTime.ShouldBe(6000);
        ClockOf(Cards.On(Cards.Kinetics, 25, card => card.GelTimeMin = 300)).GelTime.ShouldBe(9805.8, 0.1);
    }

    [Theory]
    [InlineData(null, 25, 3600)]
    [InlineData(null, 15, 7200)]
    [InlineData(60.0, 15, 8314.0)]
    public void Gel_StatedAtATemperature_IsCarriedToTheShop(double? activation, double degC, double seconds)
    {
        InfusionPlan plan = Cards.On(Cards.Plain, degC, card => card.GelTimeAtDegC = 25);
        if (activation is double value) plan.Resin.GelTimeActivationKjPerMol = value;
        double expected = activation is null ? seconds : 3600 * Math.Exp(60e3 / 8.314462618 * (1 / 288.15 - 1 / 298.15));
        ClockOf(plan).GelTime.ShouldBe(expected, 1e-6);
    }

    [Fact]
    public void Gel_PotLifeAlone_IsTaken() =>
        ClockOf(Cards.On("""{ "viscosityPaS": 0.3, "potLifeMin": 40, "densityKgPerM3": 1100 }""")).GelTime.ShouldBe(2400);

    [Fact]
    public void Gel_EndOfTheCurve_IsTheLatest()
    {
        ClockOf(Cards.On(Cards.Curve, null, card => card.MixToOpenMin = 5)).GelTime.ShouldBe(2700);
        ClockOf(Cards.On(Cards.Curve, null, card => card.GelTimeMin = 45)).GelTime.ShouldBe(2700);
    }

    [Fact]
    public void Course_OfTemperatures_ThinsTheResinOnItsWay()
    {
        InfusionPlan plan = Cards.On(Cards.Table);
        plan.Shop = Cards.Course((0, 20), (30, 30));
        DriveClock clock = ClockOf(plan);
        clock.ViscosityAt(0).ShouldBe(0.423181, 1e-6);
        clock.ViscosityAt(1800).ShouldBe(0.215102, 1e-6);
    }

    private static DriveClock ClockOf(InfusionPlan plan)
    {
        FillInputs inputs = Cards.Inputs(plan);
        return new DriveClock(inputs.Resin, inputs.Bag);
    }
}
