namespace InfusionSim.Protocol.Plans;

/// <summary>How large a plan may be. Each is checked before anything of that size is allocated.</summary>
public static class PlanLimits
{
    /// <summary>Squares in the rectangle round the outline [-].</summary>
    public const int MostSquares = 1_000_000;

    /// <summary>Squares that are aimed at when the plan names no size [-].</summary>
    public const int UsualSquares = 20_000;

    /// <summary>Squares of cloth below which a forecast is only a hint [-] (our own judgement).</summary>
    public const int FewSquares = 100;

    /// <summary>Corners of all outlines, cut-outs, zones and lines together [-].</summary>
    public const int MostCorners = 20_000;

    /// <summary>Feeds and vents together [-].</summary>
    public const int MostLines = 200;

    /// <summary>Flow meshes [-].</summary>
    public const int MostMeshes = 50;

    /// <summary>Cores [-].</summary>
    public const int MostCores = 50;

    /// <summary>Gaps [-].</summary>
    public const int MostGaps = 100;

    /// <summary>Clamp steps of all lines together, and steps of the vacuum [-]: each is a fresh start of the flow.</summary>
    public const int MostClampSteps = 100;

    /// <summary>Pots [-].</summary>
    public const int MostPots = 50;

    /// <summary>Rows of a table of temperatures [-].</summary>
    public const int MostRows = 200;

    /// <summary>Readings of a viscosity that was measured over time [-].</summary>
    public const int MostReadings = 2000;

    /// <summary>Plies that one zone lists [-].</summary>
    public const int MostPlies = 200;

    /// <summary>Squares times layers [-].</summary>
    public const int MostNodes = 1_000_000;

    /// <summary>Squares that the bore of a line or the width of a gap may cover [-]; wider is an area, no line (our own judgement).</summary>
    public const double WidestLineSquares = 3;

    /// <summary>How many times a permeability in the plane may exceed that across it [-]: as far as the flow is tested.</summary>
    public const double MostAnisotropy = 100;

    /// <summary>Timing marks [-].</summary>
    public const int MostMarks = 200;

    /// <summary>Zones [-].</summary>
    public const int MostZones = 100;

    /// <summary>Cut-outs [-].</summary>
    public const int MostCutouts = 200;

    /// <summary>Letters of a name [-].</summary>
    public const int LongestName = 60;

    /// <summary>Letters of the title, and of what says where the resin's numbers come from [-].</summary>
    public const int LongestTitle = 200;

    /// <summary>Side of the outline below which it was surely drawn in another unit than millimetres [mm] (our own judgement).</summary>
    public const double SmallestPanelMm = 10;

    /// <summary>How near two things on the drawing count as touching [mm].</summary>
    public const double TouchingMm = 0.01;

    /// <summary>How far off the edge of the cloth a line may be drawn and still lie on it [mm], never more than half its width: about as exactly as a line can be laid.</summary>
    public const double LineReachMm = 1;
}
