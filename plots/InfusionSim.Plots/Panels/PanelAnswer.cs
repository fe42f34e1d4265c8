using InfusionSim.Plots.Contours;
using InfusionSim.Plots.Words;
using InfusionSim.Protocol.V1;

namespace InfusionSim.Plots.Panels;

/// <summary>A plan with the answer to it, checked and ready to draw, seen on one side of the panel.</summary>
/// <param name="Plan">The plan with its defaults and names.</param>
/// <param name="Response">The answer, with the front map.</param>
/// <param name="Face">The side that is shown.</param>
/// <param name="Front">When the front passes each square on that side.</param>
/// <param name="Cloth">Where the cloth lies.</param>
/// <param name="Map">The front on that side, ready for lines.</param>
internal sealed record PanelAnswer(InfusionPlan Plan, PredictFillResponse Response, PanelFace Face, FrontMap Front, ClothArea Cloth, ArrivalMap Map)
{
    // What ends within this share of the end of the fill ends with it.
    private const double SameMoment = 1e-3;

    /// <summary>The forecast.</summary>
    internal FillForecast Forecast => Response.Forecast;

    /// <summary>Whether bag side and tool side fill apart.</summary>
    internal bool HasSides => Response.FrontMap.ToolSide is not null;

    /// <summary>What the answer says, in a sentence.</summary>
    internal string Sentence => ForecastText.Sentence(Plan, Response);

    /// <summary>The side in words; empty for a panel of one layer.</summary>
    internal string Side => !HasSides ? "" : Face == PanelFace.ToolSide ? "tool side" : "bag side";

    /// <summary>The plan's title with the side that is shown.</summary>
    internal string Title => HasSides ? $"{Plan.Title}, {Side}" : Plan.Title;

    /// <summary>Checks a plan and its answer.</summary>
    /// <param name="plan">The plan that was asked about.</param>
    /// <param name="response">Its answer, with the front map.</param>
    /// <param name="face">The side to show.</param>
    /// <exception cref="ArgumentException">When the answer has no front map, or none of that side.</exception>
    internal static PanelAnswer Of(InfusionPlan plan, PredictFillResponse response, PanelFace face = PanelFace.BagSide)
    {
        plan = Require.Plan(plan);
        Require.FrontMap(response);
        var front = face == PanelFace.ToolSide ? ToolSideOf(response) : response.FrontMap;
        var cloth = new ClothArea(plan);
        return new PanelAnswer(plan, response, face, front, cloth, new ArrivalMap(front, cloth));
    }

    /// <summary>Whether the fill is over at a moment.</summary>
    internal bool IsEnd(FillMoment moment) => moment.TimeS >= Forecast.EndTimeS * (1 - 1e-6);

    /// <summary>Where the front comes last on the side that is shown and when; null when it comes nowhere.</summary>
    internal (Spot At, double TimeS)? Last()
    {
        if (Forecast.LastToFill is not { } last || !(Forecast.EndTimeS > 0))
        {
            return null;
        }

        var (square, latest) = Latest();
        if (!HasSides || square < 0 || IsAtEnd(last))
        {
            return (ClothArea.Read(last), Forecast.EndTimeS);
        }

        var grid = Front.Grid;
        return (new Spot(grid.OriginXMm + (square % grid.Columns + 0.5) * grid.CellMm, grid.OriginYMm + (square / grid.Columns + 0.5) * grid.CellMm), latest);
    }

    private static FrontMap ToolSideOf(PredictFillResponse response)
    {
        Require.ToolSide(response);
        var map = response.FrontMap;
        return new FrontMap { Grid = map.Grid, Squares = map.ToolSide.Squares, ArrivalTimeS = { map.ToolSide.ArrivalTimeS } };
    }

    private bool IsAtEnd(Point last)
    {
        var square = Map.SquareAt(ClothArea.Read(last));
        return Front.Squares[square] != (byte)SquareState.Wets || Front.ArrivalTimeS[square] >= Forecast.EndTimeS * (1 - SameMoment);
    }

    private (int Square, double TimeS) Latest()
    {
        var (square, latest) = (-1, 0f);
        for (var i = 0; i < Front.Squares.Length; i++)
        {
            if (Front.Squares[i] == (byte)SquareState.Wets && Front.ArrivalTimeS[i] > latest)
            {
                (square, latest) = (i, Front.ArrivalTimeS[i]);
            }
        }

        return (square, latest);
    }
}
