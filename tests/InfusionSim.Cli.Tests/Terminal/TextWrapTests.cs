using InfusionSim.Cli.Commands;
using InfusionSim.Cli.Terminal;

namespace InfusionSim.Cli.Tests.Terminal;

public sealed class TextWrapTests
{
    [Theory]
    [InlineData("Vent     V1 wet at 30 min, 100 % filled by then", 40, "Vent     V1 wet at 30 min, 100 % filled\n         by then")]
    [InlineData("         by then and a good deal more than that", 40, "         by then and a good deal more\n         than that")]
    [InlineData("  resin.viscosityPaS is 300 Pa·s; it must lie between", 40, "  resin.viscosityPaS is 300 Pa·s; it\n  must lie between")]
    [InlineData("a line of words without any label at all, it goes on", 40, "a line of words without any label at\nall, it goes on")]
    public void Fold_LongLine_GoesOnUnderItsFirstWord(string line, int width, string expected) =>
        string.Join('\n', TextWrap.Fold(line, width)).ShouldBe(expected);

    [Theory]
    [InlineData("Air      no dry spot above 1 cm²", 80)]
    [InlineData("  12 min  ####......   30 % full,   12 cm³ in", 60)]
    [InlineData("a line of words that is longer than any window would be, were there one to show it in, which there is not here, so it stays", null)]
    public void Fold_LineThatFits_StaysAsItIs(string line, int? width) => TextWrap.Fold(line, width).ShouldBe([line]);

    [Fact]
    public void Table_WiderThanTheScreen_IsToldRowByRow()
    {
        IReadOnlyList<IReadOnlyList<string>> rows = [["", "Outcome", "Full", "Two in three"], ["1 calm", "FILLS", "30 min", "20 to 45 min"], ["2 quick", "GELS FIRST", "80 % full", "-"]];

        TextTable.Lines(rows, 80).ShouldBe(TextTable.Lines(rows));
        string.Join('\n', TextTable.Lines(rows, 40)).ShouldBe(
            "1 calm\n  Outcome FILLS; Full 30 min; Two in\n  three 20 to 45 min\n2 quick\n  Outcome GELS FIRST; Full 80 % full;\n  Two in three -");
    }

    [Fact]
    public async Task Answer_OnAWindowOf80_KeepsWithinIt()
    {
        using CommandSession session = new() { Width = 80 };
        await session.RunAsync("new strip 300x50 --mesh --set resolution.cellMm=5 -o strip.json");

        (await session.RunAsync("fill strip.json")).ShouldBe(ExitCodes.Done, session.Error);

        // The last line names a file, whose name is not cut.
        session.Output.Split('\n')[..^2].Max(line => line.Length).ShouldBeInRange(70, 80);
        session.Error.Split('\n').Max(line => line.Length).ShouldBeLessThanOrEqualTo(80);
    }
}
