using BrewFloor.Brewing.Calculators;
using BrewFloor.Web.Shell;

namespace BrewFloor.Web.Calculators;

/// <summary>Every question that the floor can answer by arithmetic, by subject.</summary>
public sealed partial class CalculatorsPage(Wording wording)
{
    private static IEnumerable<(string Subject, IEnumerable<string> Questions)> BySubject =>
        AllCalculators
            .All.GroupBy(calculator => calculator.Subject)
            .Select(group => (group.Key.ToString(), group.Select(calculator => calculator.Name)));
}
