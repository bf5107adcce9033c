namespace Framing.Nights;

/// <summary>In which order the hand control takes a date.</summary>
public enum DateOrder
{
    /// <summary><c>year-month-day</c> in a plan.</summary>
    YearMonthDay = 0,

    /// <summary><c>month-day-year</c> in a plan.</summary>
    MonthDayYear = 1,

    /// <summary><c>day-month-year</c> in a plan.</summary>
    DayMonthYear = 2,
}
