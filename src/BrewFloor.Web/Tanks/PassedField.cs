using BrewFloor.Web.Log;

namespace BrewFloor.Web.Tanks;

/// <summary>Passed or failed: two slabs, and neither is chosen for anybody.</summary>
public static class PassedField
{
    private const string Passed = "passed";

    public static Field Of(FormFloor floor) =>
        new ChoiceField(
            Passed,
            [("yes", floor.Words.Entry("choice.passed")), ("no", floor.Words.Entry("choice.failed"))]
        )
        {
            IsRequired = true,
        };

    public static bool Read(FormReader said) => said.RequiredText(Passed) is "yes";
}
