using Google.Protobuf;
using InfusionSim.Numerics.Grids;
using InfusionSim.Physics.Air;
using InfusionSim.Physics.Flow;
using InfusionSim.Physics.Forecasts;
using InfusionSim.Protocol.Plans;
using InfusionSim.Protocol.Units;
using FillMoment = InfusionSim.Protocol.V1.FillMoment;
using MomentSide = InfusionSim.Protocol.V1.MomentSide;

namespace InfusionSim.Protocol.Forecasts;

/// <summary>Turns the panel at one time into the moment that pictures are drawn from.</summary>
public static class FillMomentMapping
{
    /// <summary>Maps one moment.</summary>
    /// <remarks>The flow is computed as if trapped gas let the resin in, so what stays dry at the end is kept dry here.</remarks>
    /// <param name="state">The panel at that time.</param>
    /// <param name="time">The time [s].</param>
    /// <param name="forecast">The forecast it belongs to.</param>
    /// <param name="inputs">What the forecast was computed from.</param>
    public static FillMoment ToContract(FillState state, double time, Forecast forecast, FillInputs inputs)
    {
        ArgumentNullException.ThrowIfNull(state);
        ArgumentNullException.ThrowIfNull(forecast);
        ArgumentNullException.ThrowIfNull(inputs);
        FillProblem problem = forecast.Map.Problem;
        CutCellGrid cells = problem.Cells;
        Dictionary<int, double> most = MostWet(forecast.DrySpots, cells);
        var moment = new FillMoment
        {
            TimeS = UnitConversion.Kept(Finite.Needed(time, "the time of a moment")),
            FilledFraction = UnitConversion.Kept(Finite.Needed(state.FilledFraction, "the filled fraction")),
            Grid = FrontMapMapping.ToGrid(cells.Grid),
            WetShare = ByteString.CopyFrom(WetShares(state, cells, problem.BagSide, most)),
            ResinInCm3 = UnitConversion.Cm3FromCubicMetres(Finite.Needed(state.ResinIn.Sum(), "the resin in")),
            ResinOutCm3 = UnitConversion.Cm3FromCubicMetres(Finite.Needed(state.ResinOut.Sum(), "the resin out")),
        };
        if (state.Pressure is double[] pressure) moment.PressureMbarAbs.AddRange(Pressures(pressure, cells, problem.BagSide, inputs.Bag));
        if (!FrontMapMapping.HasLayers(forecast)) return moment;
        moment.ToolSide = new MomentSide { WetShare = ByteString.CopyFrom(WetShares(state, cells, problem.ToolSide, most)) };
        if (state.Pressure is double[] below) moment.ToolSide.PressureMbarAbs.AddRange(Pressures(below, cells, problem.ToolSide, inputs.Bag));
        return moment;
    }

    // How wet a node that stays dry in part is at the end.
    private static Dictionary<int, double> MostWet(IReadOnlyList<DrySpot> drySpots, CutCellGrid cells)
    {
        var most = new Dictionary<int, double>();
        foreach (DrySpot spot in drySpots)
        {
            double wetAtTheEnd = Math.Clamp(1 - spot.Area / spot.Cells.Sum(cell => cells.Area[cell]), 0, 1);
            foreach (int node in spot.Nodes) most[node] = wetAtTheEnd;
        }

        return most;
    }

    private static byte[] WetShares(FillState state, CutCellGrid cells, int[] nodeOf, Dictionary<int, double> most)
    {
        var shares = new byte[cells.Grid.CellCount];
        for (int square = 0; square < shares.Length; square++)
        {
            int owner = cells.OwnerOf[square];
            if (owner < 0) continue;
            int node = nodeOf[owner];
            shares[square] = (byte)Math.Round(255 * Math.Clamp(state.Saturation[node], 0, most.GetValueOrDefault(node, 1)));
        }

        return shares;
    }

    private static float[] Pressures(double[] pressure, CutCellGrid cells, int[] nodeOf, Physics.Clock.Bag bag)
    {
        var answer = new float[cells.Grid.CellCount];
        for (int square = 0; square < answer.Length; square++)
        {
            int owner = cells.OwnerOf[square];
            double share = owner >= 0 ? Finite.Needed(pressure[nodeOf[owner]], "a pressure") : 0;
            answer[square] = (float)((bag.Pressure + share * (bag.Ambient - bag.Pressure)) / 100);
        }

        return answer;
    }
}
