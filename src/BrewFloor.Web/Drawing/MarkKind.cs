namespace BrewFloor.Web.Drawing;

/// <summary>What a mark means; one meaning each.</summary>
public enum MarkKind
{
    // Soil state.
    Soiled,
    Rinsed,
    Clean,
    Sanitized,

    // Stage of a batch.
    Planned,
    Filled,
    Fermenting,
    Finished,
    Cold,
    Packaged,
    Discarded,

    // Urgency.
    Overdue,
    Due,
    Soon,
    NothingDue,

    // Objections.
    Stop,
    Caution,

    // Where an entry is.
    OnThisPhone,
    OnTheServer,
    InABackup,
    DoneAnyway,

    // Tanks and cultures.
    OutOfService,
    FreshPack,
    InOrder,
    Drifting,

    // Acts.
    Done,
    Gravity,
    Temperature,
    Pressure,
    Valve,
    Dump,
    Wash,
    Fill,
    Rack,
    Acid,
    Pitch,
    Sample,
    Package,
    Note,
    More,
}
