namespace ElbowAssist.Store.Entries;

/// <summary>An event as it was kept.</summary>
/// <param name="Number">Counts up over the whole store; a later entry has a larger number.</param>
/// <param name="At">When, by the clock of the machine.</param>
/// <param name="Who">The reader's own word for themselves, or empty.</param>
/// <param name="Event">What happened.</param>
public sealed record StudyEntry(long Number, DateTimeOffset At, string Who, StudyEvent Event);
