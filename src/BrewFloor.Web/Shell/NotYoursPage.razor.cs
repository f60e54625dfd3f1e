namespace BrewFloor.Web.Shell;

/// <summary>The role of who is signed in doesn't reach this far.</summary>
public sealed partial class NotYoursPage(Wording wording);
