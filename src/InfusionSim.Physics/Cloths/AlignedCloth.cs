using InfusionSim.Physics.Panels;

namespace InfusionSim.Physics.Cloths;

/// <summary>A zone's numbers along x and y.</summary>
/// <param name="ConductanceX">Permeability along x times thickness [m³].</param>
/// <param name="ConductanceY">Permeability along y times thickness [m³].</param>
/// <param name="PoreHeight">Porosity times thickness: pore volume per area [m].</param>
public readonly record struct AlignedCloth(double ConductanceX, double ConductanceY, double PoreHeight)
{
    // A hundredth of a degree: below it the cross term K1 − K2 puts in is lost in the scatter of any cloth.
    private const double AngleTolerance = 1.7e-4;

    /// <summary>Conductance along y over that along x [-].</summary>
    public double Ratio => ConductanceY / ConductanceX;

    /// <summary>Conductance the same flow would meet in cloth alike in all directions, √(Kx·Ky) times thickness [m³].</summary>
    public double MeanConductance => Math.Sqrt(ConductanceX * ConductanceY);

    /// <summary>Permeability times thickness along a direction, n·K·n [m³].</summary>
    /// <param name="x">Component of the unit vector along x [-].</param>
    /// <param name="y">Component of the unit vector along y [-].</param>
    public double ConductanceAlong(double x, double y) => ConductanceX * x * x + ConductanceY * y * y;

    /// <summary>Numbers of a zone whose axes lie along x and y, or at any angle when it is alike in all directions.</summary>
    /// <param name="zone">The zone.</param>
    /// <exception cref="NotSupportedException">When K1 and K2 differ and K1 lies neither along x nor along y.</exception>
    public static AlignedCloth Of(Zone zone)
    {
        ArgumentNullException.ThrowIfNull(zone);
        Permeability permeability = zone.Permeability;
        double sine = Math.Abs(Math.Sin(permeability.Angle)), cosine = Math.Abs(Math.Cos(permeability.Angle));
        bool sameAllRound = permeability.K1 == permeability.K2;
        if (!sameAllRound && Math.Min(sine, cosine) > AngleTolerance)
        {
            double degrees = permeability.Angle * 180 / Math.PI;
            throw new NotSupportedException($"Zone '{zone.Name}' is turned by {degrees:0.##}°; only 0, 90, 180 and 270° are computed so far.");
        }

        bool alongX = sine < cosine;
        double x = alongX ? permeability.K1 : permeability.K2, y = alongX ? permeability.K2 : permeability.K1;
        return new(x * zone.Thickness, y * zone.Thickness, zone.Porosity * zone.Thickness);
    }
}
