using BrewFloor.Domain.Log;
using BrewFloor.Domain.Yeast;
using BrewFloor.Web.Log;

namespace BrewFloor.Web.Yeast;

/// <summary>The form of <see cref="CultureDiscarded"/>.</summary>
public sealed class CultureDiscardedForm : EntryForm
{
    public override string Kind => "culture-discarded";

    public override SubjectKind About => SubjectKind.Culture;

    public override IEnumerable<Field> Fields(FormFloor floor) => [new TextField("why") { IsRequired = true }];

    public override IEnumerable<LogEntry> Read(FormReader said, FormFloor floor) =>
        [new CultureDiscarded(floor.CultureId, said.RequiredText("why"))];

    public override bool IsOffered(FormFloor floor) => floor.Culture is not null;

    public override int Likelihood(FormFloor floor) => 40;
}
