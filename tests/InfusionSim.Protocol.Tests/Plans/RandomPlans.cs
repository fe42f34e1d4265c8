using CsCheck;
using InfusionSim.Protocol.V1;

namespace InfusionSim.Protocol.Tests.Plans;

/// <summary>Plans that a careless or hostile caller may send: every number from a list of nasty ones now and then, drawings at random.</summary>
internal static class RandomPlans
{
    private static readonly Gen<double> Nasty = Gen.OneOf(
        0, -0.0, 1, -1, double.NaN, double.PositiveInfinity, double.NegativeInfinity, double.MaxValue, double.MinValue, double.Epsilon, 1e-300, 1e5, -1e5, 100_000.0000001, 0.05, 0.98, 1e-10);

    private static readonly Gen<double> Coordinate = Gen.Frequency((8, Gen.Int[-2, 12].Select(k => 50.0 * k)), (2, Gen.Double[-100, 700]), (1, Nasty));

    private static readonly Gen<Point> Place = Gen.Select(Coordinate, Coordinate, Gen.Int[0, 60]).Select((x, y, gap) =>
    {
        var point = new Point();
        if (gap != 0) point.XMm = x;
        if (gap != 1) point.YMm = y;
        return point;
    });

    private static readonly Gen<Ring> Ring = Place.Array[0, 8].Select(points => new Ring { Points = { points } });

    private static readonly Gen<V1.Path> Path = Place.Array[0, 4].Select(points => new V1.Path { Points = { points } });

    private static readonly Gen<string> Name = Gen.OneOf("", " ", "F1", "V1", "a", "\u001b[1m", "very long name " + new string('x', 100), "ünïcode 🙂");

    /// <summary>Any plan.</summary>
    public static readonly Gen<InfusionPlan> Any = Gen.Select(Ring, Ring.Array[0, 2], Path.Array[0, 3], Path.Array[0, 3], Name, Gen.Int[0, 30], Nasty, Gen.Int[0, 200])
        .Select((outline, cutouts, feeds, vents, name, shape, nasty, field) =>
        {
            InfusionPlan plan = shape % 4 == 1 ? RealLayUp.Plan() : StraightStrip.Plan();
            if (shape < 12) plan.Preform.Outline = outline;
            if (shape % 2 == 0) plan.Preform.Cutouts.Add(cutouts);
            if (shape % 3 == 0) plan.Preform.Zones[0].Area = outline;
            if (shape % 5 == 0) plan.Resolution = null;
            foreach (V1.Path path in feeds) plan.Feeds.Add(new Feed { Name = name, Path = path });
            foreach (V1.Path path in vents) plan.Vents.Add(new Vent { Path = path, Kind = (VentKind)(shape % 4) });
            if (shape == 13) plan.Feeds[0].Path = null;
            if (shape == 14) plan.Preform = null;
            if (shape == 15) plan.Resin = null;
            if (shape == 16) plan.Bag = null;
            Spoil(plan, field, nasty);
            return plan;
        });

    // Sets one number of the plan, wherever the walk over all of them comes to.
    private static void Spoil(InfusionPlan plan, int which, double value)
    {
        Protocol.Plans.MessageWalk.Place[] numbers = [.. Protocol.Plans.MessageWalk.Fields(plan)
            .Where(place => place.Field.FieldType == Google.Protobuf.Reflection.FieldType.Double)];
        if (which < numbers.Length) numbers[which].Field.Accessor.SetValue(numbers[which].Message, value);
    }
}
