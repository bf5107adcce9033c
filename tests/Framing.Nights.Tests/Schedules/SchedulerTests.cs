namespace Framing.Nights.Tests.Schedules;

public class SchedulerTests
{
    private const int Instances = 500;

    [Fact]
    public void Solve_RandomSmallInstances_BruteForceFindsNothingBetter()
    {
        var checkedOnes = 0;
        for (var seed = 0; seed < Instances; seed++)
        {
            var instance = SmallInstance.Random(seed);
            var best = new BruteForce(instance).Best();
            var (plan, bound, isBest) = Scheduler.Solve(instance.Problem());
            Assert.True(
                isBest,
                FormattableString.Invariant($"seed {seed} was not solved for certain")
            );
            Assert.Equal(best.Fraction, plan.Score.LeastFraction);
            Assert.Equal(best.Subs, plan.Score.Subs);
            Assert.Equal(best.Changes, plan.Score.Changes);
            Assert.Equal(best.Airmass, plan.Score.Airmass, 1e-6);
            Assert.True(
                bound.LeastFraction >= best.Fraction && bound.MostSubs(best.Fraction) >= best.Subs,
                FormattableString.Invariant($"seed {seed}: the bound lies below a plan")
            );
            checkedOnes++;
        }

        Assert.Equal(Instances, checkedOnes);
    }

    [Fact]
    public void Search_RandomSmallInstances_AsManySubsAsTheBestPlan()
    {
        // The search for large problems on small ones: shares and subs as the certain best, changes and airmass nearly always.
        const int few = 60;
        var same = 0;
        for (var seed = 0; seed < few; seed++)
        {
            var problem = SmallInstance.Random(seed).Problem();
            var best = Scheduler.Solve(problem).Plan;
            var plan = Scheduler.Search(problem, new(problem));
            Assert.False(plan.Score.IsBetterThan(best.Score));
            Assert.Equal(best.Score.LeastFraction, plan.Score.LeastFraction);
            Assert.Equal(best.Score.Subs, plan.Score.Subs);
            same += best.Score.IsBetterThan(plan.Score) ? 0 : 1;
        }

        Assert.True(same >= few * 0.95, FormattableString.Invariant($"{same} of {few}"));
    }
}
