namespace BrewFloor.Domain.People;

/// <summary>What somebody may do, each including the one before.</summary>
public enum Role
{
    Viewer, // reads
    Helper, // logs, done anyway, takes and puts off jobs, corrects or strikes own entries for 24 h
    Brewer, // also anyone's for 30 days, allows beforehand, answers, edits tanks, batches, cultures
    Owner, // also ratings, people, tokens, house rules, any date
}

/// <summary>Who hands an entry in: a person's account, or a token that may never allow, strike, correct, or back-date beyond 24 h.</summary>
public sealed record Author(Guid Id, Role Role, bool IsToken = false);
