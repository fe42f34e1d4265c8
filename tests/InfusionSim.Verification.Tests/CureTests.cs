using InfusionSim.Physics.Resins;
using InfusionSim.Verification.Tests.Accuracy;

namespace InfusionSim.Verification.Tests;

/// <summary>The cure of a resin against a closed form, against published kinetics integrated apart, and the pot against a plain Runge–Kutta march.</summary>
public sealed class CureTests
{
    private static readonly CureKinetics Invented = new(new(1e5, 55e3), new(2e5, 50e3), 1, 1.5, 0, 0.577) { Heat = new(450e3, 1900) };

    // Source: separation of the variables, α = (exp(St) − 1)/(exp(St) + k₂/k₁), S = k₁ + k₂. Tolerance 1e-6.
    [Fact]
    public void Conversion_OrdersOfOne_IsTheClosedForm()
    {
        CureCourse course = new(new(new(1e-4, 0), new(1e-3, 0), 1, 1, 0, 0.577), new TemperatureCourse(298.15), 0);
        new AccuracyRecord(
            "cure with m = n = 1, degree of cure after 2000 s", "Kamal and Sourour, closed form, derived", 0.42181379, course.ConversionAt(2000), "",
            "no grid").ShouldHold(1e-6);
        new AccuracyRecord(
            "cure with m = n = 1, time to 0.577", "Kamal and Sourour, closed form, derived", 2520.804, course.TimeOf(0.577), "s", "no grid").ShouldHold(1e-6);
    }

    // Source: Bogetti and Gillespie, J. Compos. Mater. 25 (1991) 239–273, glass and polyester: A = 6.167e20 1/s (3.7e22 per minute, rounded), E = 167.4 kJ/mol,
    // m = 0.524, n = 1.476, from 0.0001 on; times from an independent integration. Tolerance 0.1 %.
    [Theory]
    [InlineData(0.5, 4025.49)]
    [InlineData(0.9, 11550.0)]
    public void Time_PublishedPolyesterAtNinetyDegrees_IsTheIndependentOne(double conversion, double seconds)
    {
        CureKinetics polyester = new(new(0, 0), new(6.167e20, 1.674e5), 0.524, 1.476, 1e-4, 0.05);
        CureCourse course = new(polyester, new TemperatureCourse(363.15), 0);
        new AccuracyRecord(
            $"polyester at 90 °C, time to a cure of {conversion}", "kinetics of Bogetti and Gillespie 1991, integrated apart", seconds,
            course.TimeOf(conversion), "s", "no grid").ShouldHold(1e-3);
    }

    // Source: an invented epoxy, integrated apart. Tolerance 0.1 %.
    [Theory]
    [InlineData(20, 13986.6)]
    [InlineData(25, 9805.8)]
    [InlineData(40, 3614.5)]
    [InlineData(60, 1097.1)]
    public void Gel_InventedEpoxy_IsTheIndependentOne(double celsius, double seconds) =>
        new AccuracyRecord(
            $"invented epoxy at {celsius} °C, gel", "independent integration", seconds,
            new GelAtConversion(Invented).TimeFromMixing(new(celsius + 273.15), 0), "s", "no grid", InTable: celsius == 25).ShouldHold(1e-3);

    // Source: classical Runge–Kutta of order 4 in steps of 0.1 s, below. Tolerance 1e-6 of the temperature above the shop's, 0.2 s.
    [Fact]
    public void Peak_PotOfOneKilogram_IsThatOfAPlainMarch()
    {
        (double peak, double time) = PlainMarch(1, 0.6, 298.15);
        PotExotherm pot = new(Invented, 1, 0.6, 298.15, 298.15);
        new AccuracyRecord(
            "pot of 1 kg, invented epoxy, rise of temperature", "lumped balance, plain Runge–Kutta march", peak - 298.15,
            pot.PeakTemperature - 298.15, "K", "no grid").ShouldHold(1e-5);
        new AccuracyRecord(
            "pot of 1 kg, invented epoxy, time of the peak", "lumped balance, plain Runge–Kutta march", time, pot.PeakTime, "s", "no grid").ShouldHold(1e-4);
        (pot.PeakTemperature - 273.15).ShouldBe(251.89, 0.1);
        pot.PeakTime.ShouldBe(2031.5, 1);
    }

    private static (double Peak, double Time) PlainMarch(double mass, double cooling, double shop)
    {
        const double Step = 0.1, Capacity = 1900, Heat = 450e3;
        double cure = 0, temperature = shop, peak = shop, peakTime = 0;
        for (int k = 1; k < 50_000; k++)
        {
            (double a1, double b1) = Slopes(cure, temperature);
            (double a2, double b2) = Slopes(cure + Step / 2 * a1, temperature + Step / 2 * b1);
            (double a3, double b3) = Slopes(cure + Step / 2 * a2, temperature + Step / 2 * b2);
            (double a4, double b4) = Slopes(cure + Step * a3, temperature + Step * b3);
            cure += Step / 6 * (a1 + 2 * a2 + 2 * a3 + a4);
            temperature += Step / 6 * (b1 + 2 * b2 + 2 * b3 + b4);
            if (temperature > peak) (peak, peakTime) = (temperature, k * Step);
        }

        return (peak, peakTime);

        (double, double) Slopes(double alpha, double kelvin)
        {
            double first = 1e5 * Math.Exp(-55e3 / 8.314462618 / kelvin), second = 2e5 * Math.Exp(-50e3 / 8.314462618 / kelvin);
            double rate = (first + second * alpha) * Math.Pow(1 - alpha, 1.5);
            return (rate, Heat / Capacity * rate - cooling / mass / Capacity * (kelvin - shop));
        }
    }
}
