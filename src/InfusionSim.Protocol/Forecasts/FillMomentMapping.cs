using Google.Protobuf;
using InfusionSim.Numerics.Grids;
using InfusionSim.Physics.Flow;
using InfusionSim.Protocol.Units;
using FillMoment = InfusionSim.Protocol.V1.FillMoment;

namespace InfusionSim.Protocol.Forecasts;

/// <summary>Turns the panel at one time into the moment that pictures are drawn from.</summary>
public static class FillMomentMapping
{
    /// <summary>Maps one moment.</summary>
    /// <param name="state">The panel at that time.</param>
    /// <param name="cells">Its squares.</param>
    /// <param name="time">The time [s].</param>
    /// <param name="bag">What drives the resin.</param>
    public static FillMoment ToContract(FillState state, CutCellGrid cells, double time, Physics.Clock.Bag bag)
    {
        ArgumentNullException.ThrowIfNull(state);
        ArgumentNullException.ThrowIfNull(cells);
        ArgumentNullException.ThrowIfNull(bag);
        var moment = new FillMoment
        {
            TimeS = UnitConversion.Kept(Finite.Needed(time, "the time of a moment")),
            FilledFraction = UnitConversion.Kept(Finite.Needed(state.FilledFraction, "the filled fraction")),
            Grid = FrontMapMapping.ToGrid(cells.Grid),
            WetShare = ByteString.CopyFrom(WetShares(state, cells)),
            ResinInCm3 = UnitConversion.Cm3FromCubicMetres(Finite.Needed(state.ResinIn.Sum(), "the resin in")),
            ResinOutCm3 = UnitConversion.Cm3FromCubicMetres(Finite.Needed(state.ResinOut.Sum(), "the resin out")),
        };
        if (state.Pressure is double[] pressure) moment.PressureMbarAbs.AddRange(Pressures(pressure, cells, bag));
        return moment;
    }

    private static byte[] WetShares(FillState state, CutCellGrid cells)
    {
        var shares = new byte[cells.Grid.CellCount];
        for (int square = 0; square < shares.Length; square++)
            if (cells.OwnerOf[square] is int owner and >= 0) shares[square] = (byte)Math.Round(255 * Math.Clamp(state.Saturation[owner], 0, 1));
        return shares;
    }

    private static float[] Pressures(double[] pressure, CutCellGrid cells, Physics.Clock.Bag bag)
    {
        var answer = new float[cells.Grid.CellCount];
        for (int square = 0; square < answer.Length; square++)
        {
            int owner = cells.OwnerOf[square];
            double share = owner >= 0 ? Finite.Needed(pressure[owner], "a pressure") : 0;
            answer[square] = (float)((bag.Pressure + share * (bag.Ambient - bag.Pressure)) / 100);
        }

        return answer;
    }
}
