namespace InfusionSim.Planning.Resins;

/// <summary>Whether the flow of one resin in a comparison was followed together with that of others, or why it could not be.</summary>
public enum FlowSharing
{
    /// <summary>The flow knows nothing of this resin that it does not know of the others: it was followed once for all of them.</summary>
    Shared,

    /// <summary>Something is done at a minute: by then another resin stands elsewhere.</summary>
    AgainForMinutes,

    /// <summary>The weight of the resin counts, and this one has another density.</summary>
    AgainForWeight,
}
