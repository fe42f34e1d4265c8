namespace InfusionSim.Gallery.Pictures;

/// <summary>One file of the gallery.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Bytes">Its content.</param>
/// <param name="Sentence">What it says, for whoever cannot see it.</param>
internal sealed record HungFile(string Name, byte[] Bytes, string Sentence);
