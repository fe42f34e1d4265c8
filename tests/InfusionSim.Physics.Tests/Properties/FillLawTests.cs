using InfusionSim.Physics.Flow;
using InfusionSim.Physics.Panels;

namespace InfusionSim.Physics.Tests.Properties;

/// <summary>What holds at every moment of every fill.</summary>
public sealed class FillLawTests
{
    [Theory]
    [InlineData(VentKind.Membrane)]
    [InlineData(VentKind.Tube)]
    public void State_AtEveryClock_KeepsTheBoundsOfPressureAndSaturation(VentKind kind)
    {
        FillMap map = LopsidedPanel.Of(kind).Map();
        FillState? before = null;
        for (int k = 1; k <= 40; k++)
        {
            FillState state = map.StateAt(map.FillClock * k / 40, withPressure: true);
            state.Saturation.ShouldAllBe(share => share >= 0 && share <= 1);
            state.Pressure!.ShouldAllBe(pressure => pressure >= 0 && pressure <= 1 + 1e-9);
            Math.Abs(state.MassBalanceError).ShouldBeLessThanOrEqualTo(1e-9);
            if (before is not null)
            {
                for (int cell = 0; cell < state.Saturation.Length; cell++) state.Saturation[cell].ShouldBeGreaterThanOrEqualTo(before.Saturation[cell] - 1e-6);
                for (int feed = 0; feed < state.ResinIn.Count; feed++) state.ResinIn[feed].ShouldBeGreaterThanOrEqualTo(before.ResinIn[feed]);
            }

            before = state;
        }

        before!.FilledFraction.ShouldBe(1, 1e-9);
    }

    [Fact]
    public void Vent_UntilItIsWet_ChangesNothing()
    {
        // A tube vent that is still dry and a membrane at the same place pass the same air and no resin.
        FillMap tube = LopsidedPanel.Of(VentKind.Tube).Map(), membrane = LopsidedPanel.Of(VentKind.Membrane).Map();
        int vent = tube.Problem.Vents[0].Contacts[0].Cell;
        double before = 0.9 * membrane.Arrival[vent];

        tube.StateAt(before).FilledFraction.ShouldBe(membrane.StateAt(before).FilledFraction, 1e-9);
        tube.StateAt(before).ResinOut[0].ShouldBe(0);
    }

    [Fact]
    public void Arrival_OfEveryCell_LiesAfterThatOfTheNeighbourItIsFedFrom()
    {
        // A cell away from the feeds is only reached through a neighbour that was reached before.
        FillMap map = LopsidedPanel.Of(VentKind.Membrane).Map();
        FivePointNeighbours of = new(map.Problem.Operator);
        HashSet<int> fed = [.. map.Problem.Feeds.SelectMany(feed => feed.Contacts).Select(contact => contact.Cell)];
        for (int cell = 0; cell < map.Arrival.Length; cell++)
        {
            if (double.IsNaN(map.Arrival[cell]) || fed.Contains(cell)) continue;
            of.Cell(cell).Min(neighbour => map.Arrival[neighbour]).ShouldBeLessThan(map.Arrival[cell], $"cell {cell}");
        }
    }

    private sealed record FivePointNeighbours(Numerics.Stencils.LatticeOperator Operator)
    {
        public IEnumerable<int> Cell(int cell)
        {
            int columns = Operator.Columns;
            if (Operator.East[cell] > 0) yield return cell + 1;
            if (cell % columns > 0 && Operator.East[cell - 1] > 0) yield return cell - 1;
            if (Operator.North[cell] > 0) yield return cell + columns;
            if (cell >= columns && Operator.North[cell - columns] > 0) yield return cell - columns;
        }
    }
}
