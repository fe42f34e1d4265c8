using InfusionSim.Protocol.V1;
using static InfusionSim.Cli.Shapes.Drawing;

namespace InfusionSim.Cli.Demo;

/// <summary>The panel of the demonstration: the deck of a sled, 1.2 m long, with a thick end round a hand hold; a scenario of our own.</summary>
/// <remarks>Numbers of the size that glass lay-ups and infusion resins have (common practice); none belongs to a product.</remarks>
public static class SledDeck
{
    private const double Length = 1200;
    private const double Width = 450;
    private const double Nose = 120;
    private const double ThickFrom = 720;

    /// <summary>The line plan that comes to mind first: a feed along one long edge, one vent in the middle of the other.</summary>
    public static InfusionPlan First()
    {
        InfusionPlan plan = Deck("Sled deck, first line plan");
        plan.Feeds.Add(Feed("F1", At(0, 0), At(Length - Nose, 0)));
        plan.Vents.Add(Vent("V1", At(Length / 2, Width)));
        return plan;
    }

    /// <summary>The better one: the vent where the cloth fills last, and a feed round the corner that lies farthest from it.</summary>
    public static InfusionPlan Second()
    {
        InfusionPlan plan = Deck("Sled deck, second line plan");
        plan.Feeds.Add(Feed("F1", At(0, Width), At(0, 0), At(Length - Nose, 0)));
        plan.Vents.Add(Vent("V1", At(Length - Nose, Width)));
        return plan;
    }

    private static InfusionPlan Deck(string title) => new()
    {
        Title = title,
        Preform = new Preform
        {
            Outline = Outline(At(0, 0), At(Length - Nose, 0), At(Length, Nose), At(Length, Width - Nose), At(Length - Nose, Width), At(0, Width)),
            Cutouts = { Rectangle(900, 180, 1080, 270) },
            PermeabilityFactor = 1.5,
            Zones =
            {
                new Zone { Name = "deck", ThicknessMm = 3, Porosity = 0.5, Permeability = new Permeability { K1M2 = 3e-10 } },
                new Zone
                {
                    Name = "thick end", Area = Rectangle(ThickFrom, 0, Length, Width),
                    ThicknessMm = 6, FibreVolumeFraction = 0.55, Permeability = new Permeability { K1M2 = 8e-11 },
                },
            },
        },
        TimingMarks = { Mark("M1", At(600, 225)), Mark("M2", At(980, 380)) },
        Resin = new Resin { ViscosityPaS = 0.2, GelTimeMin = 90, MixToOpenMin = 8, DensityKgPerM3 = 1100 },
        Bag = new Bag { PressureMbarAbs = 20, AmbientMbarAbs = 1013.25 },
        Goals = new Goals { LargestDrySpotMm2 = 100, SmallestGelMarginRatio = 1.2, MostResinOutCm3 = 150 },
    };
}
