using InfusionSim.Physics.Clock;
using InfusionSim.Physics.Flow;

namespace InfusionSim.Physics.Quality;

/// <summary>How fast the front runs through each place of the laminate when it comes there, square to the front [m/s].</summary>
/// <remarks>
/// On the drive clock it goes 1/|∇θ|, in a second so much as the clock runs at that moment. In a straight fill this is K Δp/(φ μ x), the speed of the
/// resin in the pores
/// (textbook). In cloth of two permeabilities the resin itself may run askew to the front, and then faster than this. Where there are layers it is
/// the speed in the lowest
/// sub-layer of laminate, with the way down through the thickness counted in.
/// </remarks>
internal static class FrontSpeeds
{
    /// <summary>Speed in each cell [m/s]; NaN where the front does not come before the end, or sets out from. [rows × columns], x fastest.</summary>
    /// <param name="map">Where the resin goes.</param>
    /// <param name="clock">When.</param>
    /// <param name="end">Drive clock at the end [-].</param>
    public static double[] Of(FillMap map, DriveClock clock, double end)
    {
        double[] slope = map.ToolSideSlope;
        int[] side = map.Problem.ToolSide;
        double[] speeds = new double[side.Length];
        for (int cell = 0; cell < speeds.Length; cell++)
        {
            speeds[cell] = double.NaN;
            if (side[cell] < 0 || !(map.Arrival[side[cell]] <= end)) continue;
            speeds[cell] = clock.RateAt(clock.TimeAt(map.Arrival[side[cell]])) / slope[cell];
        }

        return speeds;
    }
}
