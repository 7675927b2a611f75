/** The English words of what subscribers see change. */
export const changeWords = {
  heads: { new: 'New', moved: 'Moved', changed: 'Changed', cancelled: 'Cancelled', done: 'Done' },
  parts: {
    title: 'title',
    hours: 'hours',
    days: 'days',
    status: 'status',
    amount: 'amount',
    cautions: 'cautions',
    odds: 'odds',
    details: 'odds or details',
  },
  amountNow: (amount: string) => `amount, now ${amount}`,
  span: (first: string, last: string) => `${first} to ${last}`,
  byDays: (days: number) => `${Math.abs(days)} day${Math.abs(days) === 1 ? '' : 's'} ${days > 0 ? 'later' : 'earlier'}`,
  firstFeed: (events: number) => `A new calendar of ${events} events.`,
  nothing: 'Nothing but the soil of today.',
  seen: 'What subscribers will see change',
  wouldSee: 'What subscribers would see change',
  digestTitle: (lawn: string) => `What moved: ${lawn}`,
  digestAbout: (weeks: number, day: string) => `The last ${weeks} weeks up to ${day}.`,
  digestNothing: 'Nothing has moved.',
} as const;
