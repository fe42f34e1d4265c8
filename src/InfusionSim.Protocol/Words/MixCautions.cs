using InfusionSim.Protocol.V1;

namespace InfusionSim.Protocol.Words;

/// <summary>What must be heeded when resin is mixed: the usual cautions of the trade, below data sheets, local rules and licensed practice.</summary>
public static class MixCautions
{
    /// <summary>Weight below which an amount is not told [g].</summary>
    private const double Nothing = 0.5;

    /// <summary>The cautions of a mix sheet.</summary>
    /// <param name="sheet">The sheet.</param>
    public static IEnumerable<string> Lines(MixSheet sheet)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        yield return "Your data sheet and local rules prevail over every number here.";
        yield return "A mixed pot heats itself, can run away, smoke and burn. Mix small, in shallow vessels, away from what burns, and never leave it.";
        string left = string.Join(" and ", Left(sheet));
        yield return $"{left} pots too: spread what is left thin in a metal tray and watch it until it is cold.";
        yield return "Organic peroxide and accelerator never touch each other undiluted: they explode. Stir each into the resin by itself.";
        yield return "Gloves, sleeves, goggles and fresh air from the first minute: vapours harm, hardeners sensitise for life, peroxide blinds.";
    }

    private static IEnumerable<string> Left(MixSheet sheet)
    {
        yield return sheet.PotRestG + sheet.ReserveG < Nothing ? "The rest in the pot" : $"The {Amounts.OnScale(sheet.PotRestG + sheet.ReserveG)} that stay in the pot";
        yield return sheet.OutOfVentsG < Nothing ? "the catch pot are" : $"the {Amounts.OnScale(sheet.OutOfVentsG)} in the catch pot are";
    }
}
