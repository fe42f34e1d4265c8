using InfusionSim.Numerics.Stencils;

namespace InfusionSim.Numerics.Tests.Complementarity;

/// <summary>A square of cells of conductance 1, fed along its left side and open along its right one, in which some places conduct otherwise.</summary>
internal static class ContrastedCloth
{
    /// <summary>The square without them.</summary>
    public static LatticeOperator Even(int across)
    {
        LatticeOperator matrix = new(across, across);
        for (int cell = 0; cell < matrix.CellCount; cell++)
        {
            if (cell % across != across - 1) matrix.East[cell] = 1;
            if (cell / across != across - 1) matrix.North[cell] = 1;
        }

        for (int row = 0; row < across; row++) matrix.Anchor[row * across] = matrix.Anchor[row * across + across - 1] = 2;
        return matrix;
    }

    /// <summary>A round island and one of straight sides.</summary>
    public static LatticeOperator Islands(int across, double contrast)
    {
        LatticeOperator matrix = Even(across);
        for (int cell = 0; cell < matrix.CellCount; cell++)
        {
            double x = cell % across / (double)across, y = cell / across / (double)across;
            bool round = (x - 0.25) * (x - 0.25) + (y - 0.6) * (y - 0.6) < 0.0244, square = x > 0.59 && x < 0.82 && y > 0.2 && y < 0.47;
            if (!round && !square) continue;
            matrix.East[cell] *= contrast;
            matrix.North[cell] *= contrast;
        }

        return matrix;
    }

    /// <summary>A channel one cell wide along a column, and one along a row.</summary>
    public static LatticeOperator StraightChannels(int across, double contrast)
    {
        LatticeOperator matrix = Even(across);
        for (int along = across * 12 / 100; along < across * 78 / 100; along++)
        {
            matrix.North[along * across + across * 39 / 100 / 2 * 2] *= contrast;
            matrix.East[(across * 65 / 100 / 2 * 2 + 1) * across + along] *= contrast;
        }

        return matrix;
    }

    /// <summary>A channel one cell wide in steps: it meets rows and columns of every grid in every way.</summary>
    public static LatticeOperator SteppedChannel(int across, double contrast)
    {
        LatticeOperator matrix = Even(across);
        for (int column = across * 12 / 100, row = across / 5; column < across * 6 / 10; column++)
        {
            matrix.East[row * across + column] *= contrast;
            if (column % 7 == 3) matrix.North[row++ * across + column + 1] *= contrast;
        }

        return matrix;
    }

    /// <summary>Three hundred islands of all sizes up to a dozen cells, some beside one another.</summary>
    public static LatticeOperator ManyIslands(int across, double contrast)
    {
        LatticeOperator matrix = Even(across);
        Random random = new(6229);
        for (int island = 0; island < 300; island++)
        {
            int left = random.Next(5, across - 20), bottom = random.Next(5, across - 20), width = random.Next(1, 12), height = random.Next(1, 12);
            for (int row = bottom; row < bottom + height; row++)
                for (int column = left; column < left + width; column++) matrix.East[row * across + column] = matrix.North[row * across + column] = contrast;
        }

        return matrix;
    }
}
