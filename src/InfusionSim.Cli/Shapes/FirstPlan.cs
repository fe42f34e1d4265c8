using System.Text.RegularExpressions;
using InfusionSim.Cli.Commands;
using InfusionSim.Cli.Quantities;
using InfusionSim.Protocol.Json;
using InfusionSim.Protocol.Plans;
using InfusionSim.Protocol.Units;
using InfusionSim.Protocol.V1;

namespace InfusionSim.Cli.Shapes;

/// <summary>Makes a plan to begin with from a shape and its size.</summary>
public static partial class FirstPlan
{
    /// <summary>Makes a plan.</summary>
    /// <param name="shape">Name of the shape.</param>
    /// <param name="size">Its size as typed: 600x400, 0.6mx0.4m, 500.</param>
    /// <exception cref="CommandException">When there is no such shape or its size cannot be understood.</exception>
    public static InfusionPlan Of(string shape, string size)
    {
        PanelShape? known = PanelShapes.All.FirstOrDefault(one => one.Name == Plain(shape));
        if (known is null) throw new CommandException(ExitCodes.BadInput, Unknown(shape));
        try
        {
            double[] lengths = Lengths(known, size);
            InfusionPlan plan = Empty();
            plan.Title = $"{char.ToUpperInvariant(known.Name[0])}{known.Name[1..]} {string.Join(" × ", lengths.Select(Numbers.Say))} mm";
            known.Draw(plan, lengths);
            return plan;
        }
        catch (FormatException exception)
        {
            throw new CommandException(ExitCodes.BadInput, $"size '{size}': {exception.Message}");
        }
    }

    /// <summary>Cloth, resin and bag to begin with, without a drawing.</summary>
    /// <remarks>Numbers of the size that a light glass lay-up and a slow infusion resin have (common practice); everybody's own data sheets replace them.</remarks>
    public static InfusionPlan Empty() => new()
    {
        Preform = new Preform
        {
            PermeabilityFactor = PlanDefaults.PermeabilityFactor,
            Zones =
            {
                new Zone
                {
                    Name = "skin", ThicknessMm = 3, Porosity = 0.5,
                    Permeability = new Permeability { K1M2 = 1e-10, K2M2 = 1e-10 },
                },
            },
        },
        Resin = new Resin { ViscosityPaS = 0.2, GelTimeMin = 60, MixToOpenMin = 6, DensityKgPerM3 = 1100 },
        Bag = new Bag { PressureMbarAbs = 20, AmbientMbarAbs = PlanDefaults.StandardAmbientMbarAbs },
        Goals = new Goals { LargestDrySpotMm2 = PlanDefaults.LargestDrySpotMm2, SmallestGelMarginRatio = PlanDefaults.SmallestGelMarginRatio },
    };

    /// <summary>Lays a flow mesh over the whole bag side.</summary>
    /// <remarks>Numbers of the size that a light knitted mesh has under full vacuum (common practice); the mesh's own replace them.</remarks>
    /// <param name="plan">The plan; changed in place.</param>
    public static void LayMesh(InfusionPlan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        plan.FlowMeshes.Add(new FlowMesh { Name = "mesh", ThicknessMm = 1, Porosity = 0.85, Permeability = new Permeability { K1M2 = 3e-9 } });
    }

    private static double[] Lengths(PanelShape shape, string size)
    {
        string[] parts = [.. Times().Split(size.Trim()).Where(part => part.Length > 0)];
        if (parts.Length < shape.FewestSizes || parts.Length > shape.MostSizes)
            throw new FormatException($"a {shape.Name} is written {shape.Sizes}, for example {shape.Example} (millimetres, or with a unit: 0.6mx0.4m).");
        return [.. parts.Select(part => QuantityReader.Read("lengthMm", part, PlanDefaults.StandardAmbientMbarAbs).Value is > 0 and var length
            ? length
            : throw new FormatException($"'{part}' must be above 0."))];
    }

    private static string Unknown(string shape)
    {
        string? nearest = NearestKey.Of(shape, PanelShapes.All.Select(one => one.Name));
        string hint = nearest is null ? "" : $" Did you mean {nearest}?";
        return $"there is no shape '{shape}'.{hint} Shapes: {string.Join(", ", PanelShapes.All.Select(one => one.Name))}.";
    }

    // What else a person may call them.
    private static string Plain(string shape) => shape.ToLowerInvariant() switch
    {
        "l" or "l-shape" or "lshape" => "corner",
        "rectangle" or "square" or "panel" => "plate",
        "circle" => "disc",
        "hole" or "plate-with-hole" or "frame" => "window",
        var other => other,
    };

    // An x stands between two lengths; none of the units has one.
    [GeneratedRegex(@"\s*[x×*]\s*", RegexOptions.IgnoreCase)]
    private static partial Regex Times();
}
