using InfusionSim.Numerics.Lattice;

namespace InfusionSim.Numerics.Tests.Lattice;

public class PotentialKernelTests
{
    [Theory]
    [InlineData(1)]
    [InlineData(0.04)]
    [InlineData(17)]
    public void At_AnyCell_SatisfiesTheLatticeOperator(double ratio)
    {
        PotentialKernel kernel = new(ratio);
        double alongX = 1 / Math.Sqrt(ratio), alongY = Math.Sqrt(ratio);
        for (int row = -3; row <= 3; row++)
        {
            for (int column = -3; column <= 3; column++)
            {
                double here = kernel.At(new(column, row));
                double sum = alongX * (2 * here - kernel.At(new(column - 1, row)) - kernel.At(new(column + 1, row)))
                    + alongY * (2 * here - kernel.At(new(column, row - 1)) - kernel.At(new(column, row + 1)));
                sum.ShouldBe(row == 0 && column == 0 ? -1 : 0, 1e-12);
            }
        }
    }

    [Theory]
    [InlineData(4, 30)]
    [InlineData(4, 135)]
    [InlineData(20, 33)]
    [InlineData(100, 77)]
    public void At_AnyCellOfTurnedCloth_SatisfiesTheLatticeOperator(double ratio, double degrees)
    {
        PotentialKernel kernel = new(PlaneTensor.Of(ratio, 1, degrees * Math.PI / 180));
        for (int row = -3; row <= 3; row++)
        {
            for (int column = -3; column <= 3; column++)
            {
                double here = kernel.At(new(column, row));
                double sum = kernel.Stencil.Arms.Sum(arm => arm.Weight
                    * (2 * here - kernel.At(new(column - arm.Right, row - arm.Up)) - kernel.At(new(column + arm.Right, row + arm.Up))));
                sum.ShouldBe(row == 0 && column == 0 ? -1 : 0, 1e-11);
            }
        }
    }

    [Theory]
    [InlineData(4, 30)]
    [InlineData(20, 33)]
    [InlineData(100, 77)]
    public void FarFieldConstant_OfTurnedClothFarAway_IsWhatTheIntegralTendsTo(double ratio, double degrees)
    {
        PotentialKernel kernel = new(PlaneTensor.Of(ratio, 1, degrees * Math.PI / 180));
        foreach (LatticeCell cell in new LatticeCell[] { new(300, 0), new(0, 300), new(210, -190) })
        {
            double farField = (Math.Log(kernel.Stretch.DistanceTo(cell.Column, cell.Row)) + kernel.FarFieldConstant) / (2 * Math.PI);

            // The next term falls as the square of a cell over the distance, both in the stretched plane: 100:1 leaves 100/300².
            kernel.At(cell).ShouldBe(farField, 5e-6 * ratio);
        }
    }

    [Fact]
    public void At_IsotropicDiagonal_IsTheClosedForm()
    {
        // a(n, n) = (1/π) Σ 1/(2k − 1), k = 1…n (Spitzer, Principles of Random Walk, 1976, from memory: four times this, for steps of probability ¼).
        PotentialKernel kernel = new(1);
        double sum = 0;
        for (int n = 1; n <= 6; n++)
        {
            sum += 1.0 / (2 * n - 1);
            kernel.At(new(n, -n)).ShouldBe(sum / Math.PI, 1e-13);
        }
    }

    [Theory]
    [InlineData(1)]
    [InlineData(0.1)]
    [InlineData(5)]
    public void FarFieldConstant_FarAway_IsWhatTheIntegralTendsTo(double ratio)
    {
        PotentialKernel kernel = new(ratio);
        foreach (LatticeCell cell in new LatticeCell[] { new(300, 0), new(0, 300), new(210, 190) })
        {
            double distance = Math.Sqrt(Math.Pow(cell.Column * kernel.Stretch.AlongX, 2) + Math.Pow(cell.Row * kernel.Stretch.AlongY, 2));
            double farField = (Math.Log(distance) + kernel.FarFieldConstant) / (2 * Math.PI);

            // The next term falls as 1/r².
            kernel.At(cell).ShouldBe(farField, 1e-5);
        }
    }
}
