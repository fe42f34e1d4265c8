using InfusionSim.Architecture.Tests.Metadata;

namespace InfusionSim.Architecture.Tests;

/// <summary>The arrows of the house, on signatures, attributes and method bodies alike.</summary>
public sealed class ArrowTests
{
    /// <summary>What each project may use of the house itself. The drawings and the command line are clients: they see messages, never the solver.</summary>
    private static readonly Dictionary<string, string[]> Allowed = new()
    {
        ["InfusionSim.Numerics"] = [],
        ["InfusionSim.Physics"] = ["InfusionSim.Numerics"],
        ["InfusionSim.Planning"] = ["InfusionSim.Numerics", "InfusionSim.Physics"],
        ["InfusionSim.Protocol"] = ["InfusionSim.Numerics", "InfusionSim.Physics", "InfusionSim.Planning"],
        ["InfusionSim.Service"] = ["InfusionSim.Numerics", "InfusionSim.Physics", "InfusionSim.Planning", "InfusionSim.Protocol"],
        ["InfusionSim.Plots"] = ["InfusionSim.Protocol"],
        ["infusionsim"] = ["InfusionSim.Protocol", "InfusionSim.Service", "InfusionSim.Plots"],
    };

    /// <summary>Packages that only some projects may use: start of the namespace, then the projects.</summary>
    private static readonly (string Namespace, string[] Projects)[] Packages =
    [
        ("ScottPlot", ["InfusionSim.Plots"]),
        ("SkiaSharp", ["InfusionSim.Plots"]),
        ("HarfBuzzSharp", ["InfusionSim.Plots"]),
        ("NetTopologySuite", ["InfusionSim.Numerics"]),
        ("MathNet", ["InfusionSim.Numerics", "InfusionSim.Physics", "InfusionSim.Planning"]),
        ("Google", ["InfusionSim.Protocol", "InfusionSim.Service", "InfusionSim.Plots", "infusionsim"]),
        ("Grpc", ["InfusionSim.Protocol", "InfusionSim.Service", "infusionsim"]),
        ("Microsoft.AspNetCore", ["InfusionSim.Service", "infusionsim"]),
        ("Grpc.AspNetCore", ["InfusionSim.Service"]),
        ("System.CommandLine", ["infusionsim"]),
        ("Spectre.Console", ["infusionsim"]),
    ];

    public static TheoryData<string> Projects => [.. House.Projects];

    [Theory]
    [MemberData(nameof(Projects))]
    public void Project_UsesOfTheHouse_FollowTheArrows(string project) =>
        House.UsesOf(project)
            .Where(use => use.Assembly.StartsWith("InfusionSim.", StringComparison.Ordinal) && !Allowed[project].Contains(use.Assembly))
            .ShouldBeEmpty();

    [Theory]
    [MemberData(nameof(Projects))]
    public void Project_UsesOfPackages_StayWhereTheyBelong(string project) =>
        House.UsesOf(project).Where(use => !MayUse(project, use)).ShouldBeEmpty();

    [Theory]
    [InlineData("InfusionSim.Numerics")]
    [InlineData("InfusionSim.Physics")]
    [InlineData("InfusionSim.Planning")]
    public void Numbers_FilesClocksThreadsAndNetwork_AreNotUsed(string project) =>
        House.UsesOf(project).Where(use => use.Namespace is "System.IO" or "System.Net" or "System.Net.Http" or "System.Timers"
                || use is { Namespace: "System", Type: "DateTime" or "DateTimeOffset" or "Console" }
                || use is { Namespace: "System.Diagnostics", Type: "Stopwatch" or "Process" }
                || use is { Namespace: "System.Threading", Type: "Thread" or "Timer" })
            .ShouldBeEmpty();

    [Fact]
    public void CommandLine_UsesOfTheService_StayInItsHost() =>
        House.UsesOf("infusionsim")
            .Where(use => use.Assembly == "InfusionSim.Service" || StartsWith(use.Namespace, "Microsoft.AspNetCore"))
            .Where(use => use.UserNamespace != "InfusionSim.Cli.Hosting")
            .ShouldBeEmpty();

    [Fact]
    public void Arrows_EveryProject_IsListed() => House.Projects.ShouldBe(Allowed.Keys, ignoreOrder: true);

    private static bool MayUse(string project, TypeUse use) =>
        Packages.All(package => !StartsWith(use.Namespace, package.Namespace) || package.Projects.Contains(project));

    private static bool StartsWith(string space, string start) =>
        space == start || space.StartsWith(start + ".", StringComparison.Ordinal);
}
