using InfusionSim.Protocol.V1;
using static InfusionSim.Cli.Shapes.Drawing;

namespace InfusionSim.Cli.Shapes;

/// <summary>The shapes that `new` knows, each with a line plan that is sensible to begin with.</summary>
public static class PanelShapes
{
    private const int CircleCorners = 48;

    /// <summary>All shapes.</summary>
    public static readonly IReadOnlyList<PanelShape> All =
    [
        new("plate", "WIDTHxHEIGHT", "600x400", "feed along one long edge, vent along the other", 2, 2, Plate),
        new("strip", "LENGTHxWIDTH", "800x100", "feed on the left end, vent on the right end", 2, 2, Strip),
        new("disc", "DIAMETER", "500", "feed all round, vent in the middle", 1, 1, Disc),
        new("ring", "OUTERxINNER", "500x200", "feed along the outer edge, vent along the inner edge", 2, 2, RingShape),
        new("corner", "WIDTHxHEIGHTxLEG", "600x600x200", "an L: feed on the upper end, vent on the right end", 2, 3, Corner),
        new("window", "WIDTHxHEIGHT", "600x400", "a plate with a cut-out in its middle: feed below, vent above", 2, 2, Window),
    ];

    private static void Plate(InfusionPlan plan, double[] size)
    {
        (double width, double height) = (size[0], size[1]);
        plan.Preform.Outline = Rectangle(0, 0, width, height);
        bool isWide = width >= height;
        plan.Feeds.Add(isWide ? Feed("F1", At(0, 0), At(width, 0)) : Feed("F1", At(0, 0), At(0, height)));
        plan.Vents.Add(isWide ? Vent("V1", At(0, height), At(width, height)) : Vent("V1", At(width, 0), At(width, height)));
        plan.TimingMarks.Add(Mark("M1", At(width / 2, height / 2)));
    }

    private static void Strip(InfusionPlan plan, double[] size)
    {
        (double length, double width) = (size[0], size[1]);
        plan.Preform.Outline = Rectangle(0, 0, length, width);
        plan.Feeds.Add(Feed("F1", At(0, 0), At(0, width)));
        plan.Vents.Add(Vent("V1", At(length, 0), At(length, width)));
        plan.TimingMarks.Add(Mark("M1", At(length / 2, width / 2)));
    }

    private static void Disc(InfusionPlan plan, double[] size)
    {
        double radius = size[0] / 2;
        plan.Preform.Outline = Circle(At(radius, radius), size[0], CircleCorners);
        plan.Feeds.Add(Feed("F1", AllRound(plan.Preform.Outline)));
        plan.Vents.Add(Vent("V1", At(radius, radius)));
        plan.TimingMarks.Add(Mark("M1", At(radius, radius / 2)));
    }

    private static void RingShape(InfusionPlan plan, double[] size)
    {
        (double outer, double inner) = (size[0], size[1]);
        if (inner >= outer) throw new FormatException($"the inner diameter {inner} mm must be smaller than the outer {outer} mm.");
        Point middle = At(outer / 2, outer / 2);
        plan.Preform.Outline = Circle(middle, outer, CircleCorners);
        plan.Preform.Cutouts.Add(Circle(middle, inner, CircleCorners));
        plan.Feeds.Add(Feed("F1", AllRound(plan.Preform.Outline)));
        plan.Vents.Add(Vent("V1", AllRound(plan.Preform.Cutouts[0])));
        plan.TimingMarks.Add(Mark("M1", At(outer / 2, (outer - inner) / 4)));
    }

    private static void Corner(InfusionPlan plan, double[] size)
    {
        (double width, double height) = (size[0], size[1]);
        double leg = size.Length > 2 ? size[2] : Math.Round(Math.Min(width, height) / 3);
        if (leg >= Math.Min(width, height)) throw new FormatException($"the leg of {leg} mm must be narrower than the shape, {Math.Min(width, height)} mm.");
        plan.Preform.Outline = Outline(At(0, 0), At(width, 0), At(width, leg), At(leg, leg), At(leg, height), At(0, height));
        plan.Feeds.Add(Feed("F1", At(0, height), At(leg, height)));
        plan.Vents.Add(Vent("V1", At(width, 0), At(width, leg)));
        plan.TimingMarks.Add(Mark("M1", At(leg / 2, leg / 2)));
    }

    private static void Window(InfusionPlan plan, double[] size)
    {
        (double width, double height) = (size[0], size[1]);
        plan.Preform.Outline = Rectangle(0, 0, width, height);
        plan.Preform.Cutouts.Add(Rectangle(width / 3, height / 3, 2 * width / 3, 2 * height / 3));
        plan.Feeds.Add(Feed("F1", At(0, 0), At(width, 0)));
        plan.Vents.Add(Vent("V1", At(0, height), At(width, height)));
        plan.TimingMarks.Add(Mark("M1", At(width / 2, 5 * height / 6)));
    }
}
