using BrewFloor.Domain.Log;
using BrewFloor.Domain.Yeast;
using BrewFloor.Web.Log;

namespace BrewFloor.Web.Yeast;

/// <summary>The form of <see cref="Counted"/>.</summary>
public sealed class CountedForm : EntryForm
{
    public override string Kind => "counted";

    public override SubjectKind About => SubjectKind.Culture;

    public override IEnumerable<Field> Fields(FormFloor floor) =>
        [
            new TextField("squares")
            {
                IsNumber = true,
                Start = "5",
                Hint = "hint.squares",
                IsRequired = true,
            },
            new TextField("dilution")
            {
                IsNumber = true,
                Start = "1",
                IsRequired = true,
            },
            new TextField("live") { IsNumber = true, IsRequired = true },
            new TextField("dead") { IsNumber = true, IsRequired = true },
        ];

    public override IEnumerable<LogEntry> Read(FormReader said, FormFloor floor) =>
        [
            new Counted(
                floor.CultureId,
                said.Whole("squares"),
                said.Figure("dilution"),
                said.Whole("live"),
                said.Whole("dead")
            ),
        ];

    public override bool IsOffered(FormFloor floor) => floor.Culture is not null;

    public override int Likelihood(FormFloor floor) => 60;
}
