using BrewFloor.Domain.Log;
using BrewFloor.Domain.Tanks;
using static BrewFloor.Domain.Tests.Yeast.YeastLogs;

namespace BrewFloor.Domain.Tests.Log;

public class AnsweredTests
{
    private static readonly Opened Anyway = On(1, new Opened(K3.Id)) with { DoneAnyway = ["under-pressure"] };

    [Fact]
    public void An_answer_closes_what_was_done_anyway_and_nothing_else()
    {
        var other = On(1.5, new Opened(K3.Id)) with { DoneAnyway = ["under-pressure"] };
        var floor = TheFloor().After(Anyway, other);

        Assert.Equal([Anyway.Id, other.Id], floor.Vessel().Unanswered.Select(done => done.Moment.Entry));
        Assert.Equal([other.Id], floor.After(Answer()).Vessel().Unanswered.Select(done => done.Moment.Entry));
    }

    [Fact]
    public void What_was_done_anyway_can_be_answered_once()
    {
        var floor = TheFloor().After(Anyway);

        Assert.Empty(Answer().JudgedOn(floor).Objections);
        Assert.Equal(["nothing-to-answer"], Answer().JudgedOn(floor.After(Answer())).Codes());
    }

    [Fact]
    public void What_was_done_by_the_rules_has_nothing_to_answer() =>
        Assert.Equal(["nothing-to-answer"], Answer().JudgedOn(TheFloor().After(On(1, new Opened(K3.Id)))).Codes());

    private static Answered Answer() =>
        On(
            2,
            new Answered(Anyway.Id, "gauge was stuck; lid came off without a hiss") { Touched = [.. Anyway.Subjects] }
        );
}
