// What the library costs on the demo kitchen. benchmarks/README.md says what each workload is, and against what it is
// held.
#include <benchmark/benchmark.h>

#include <algorithm>
#include <iostream>
#include <memory>
#include <optional>
#include <utility>
#include <vector>

#include "ask/else.hpp"
#include "benchmarks/demo.hpp"
#include "benchmarks/month.hpp"
#include "benchmarks/overlap.hpp"
#include "flow/balance.hpp"

namespace {

using namespace samebase;
using benchmarks::Demo;

void report(const basics::Problems& problems) {
    for (const auto& problem : problems) std::cerr << basics::to_text(problem) << '\n';
}

/// Everything that is made ready before the clock runs.
struct World {
    Demo demo;
    ask::ElseQuestion question;
    cookbook::DishId planned;
    benchmarks::Sets sets;
    std::vector<flow::Cooking> as_planned;
    std::vector<flow::Cooking> changed;  ///< tonight's dinner replaced by the best that else finds
    basics::Span span;
    Demo month;
};

std::optional<World> world_of(Demo demo) {
    World world;
    world.demo = std::move(demo);
    const kitchen::Kitchen& kitchen = world.demo.kitchen;
    const basics::Day today = world.demo.today;
    const auto* planned = kitchen::planned(kitchen.plan, today, kitchen::Meal::dinner);
    const auto mince = kitchen.catalogue().ingredient("beef-mince");
    if (planned == nullptr || !mince) {
        std::cerr << "the demo kitchen has no dinner planned for its own day, or no beef mince\n";
        return std::nullopt;
    }
    world.planned = planned->dish;
    world.question.day = today;
    world.question.using_ = *mince;
    world.sets = benchmarks::ingredient_sets(kitchen.cookbook());
    world.span = {today, flow::horizon(kitchen, today)};
    const auto answer = ask::ask_else(kitchen, today, world.question);
    if (!answer) {
        report(answer.error());
        return std::nullopt;
    }
    if (answer->alternatives.empty()) {
        std::cerr << "else finds nothing for the beef mince of the demo kitchen\n";
        return std::nullopt;
    }
    const flow::Balancer balancer(kitchen, world.span, flow::Effort::quick);
    world.as_planned = balancer.planned();
    world.changed = world.as_planned;
    const auto tonight = std::find_if(world.changed.begin(), world.changed.end(), [&](const flow::Cooking& cooking) {
        return cooking.day == today && cooking.meal == kitchen::Meal::dinner;
    });
    if (tonight == world.changed.end()) {
        std::cerr << "tonight's dinner is not among the meals to cook\n";
        return std::nullopt;
    }
    *tonight = answer->alternatives.front().cooking;
    const auto before = balancer.balance(world.as_planned);
    if (balancer.rebalance(before, world.changed).totals != balancer.balance(world.changed).totals) {
        std::cerr << "a partial balance differs from a whole one\n";
        return std::nullopt;
    }
    world.month = benchmarks::month(world.demo);
    if (const auto reason = world.month.kitchen.check()) {
        std::cerr << "the month's kitchen: " << *reason << '\n';
        return std::nullopt;
    }
    return world;
}

void else_on_demo(benchmark::State& state, const World& world) {
    for (auto _ : state) {
        auto answer = ask::ask_else(world.demo.kitchen, world.demo.today, world.question);
        benchmark::DoNotOptimize(answer);
    }
}

void set_overlap(benchmark::State& state, const World& world) {
    for (auto _ : state) {
        auto dishes = benchmarks::by_overlap(world.sets, world.planned);
        benchmark::DoNotOptimize(dishes);
    }
}

void load_all(benchmark::State& state) {
    for (auto _ : state) {
        auto demo = benchmarks::load_knowledge().and_then([](std::shared_ptr<const kitchen::Knowledge> knowledge) {
            return benchmarks::load_demo(std::move(knowledge));
        });
        if (!demo) state.SkipWithError("the demo kitchen could not be read");
        benchmark::DoNotOptimize(demo);
    }
}

void load_kitchen(benchmark::State& state, const World& world) {
    for (auto _ : state) {
        auto demo = benchmarks::load_demo(world.demo.kitchen.knowledge);
        if (!demo) state.SkipWithError("the demo kitchen could not be read");
        benchmark::DoNotOptimize(demo);
    }
}

void balance_exact(benchmark::State& state, const World& world) {
    for (auto _ : state) {
        const flow::Balancer balancer(world.demo.kitchen, world.span, flow::Effort::exact);
        auto balance = balancer.balance(balancer.planned());
        benchmark::DoNotOptimize(balance);
    }
}

void balance_month(benchmark::State& state, const World& world) {
    const basics::Span span{world.month.today, world.month.today + basics::days{benchmarks::month_days - 1}};
    for (auto _ : state) {
        const flow::Balancer balancer(world.month.kitchen, span, flow::Effort::exact);
        auto balance = balancer.balance(balancer.planned());
        benchmark::DoNotOptimize(balance);
    }
}

void recompute(benchmark::State& state, const World& world) {
    const flow::Balancer balancer(world.demo.kitchen, world.span, flow::Effort::quick);
    for (auto _ : state) {
        auto balance = balancer.balance(world.changed);
        benchmark::DoNotOptimize(balance);
    }
}

void rebalance(benchmark::State& state, const World& world) {
    const flow::Balancer balancer(world.demo.kitchen, world.span, flow::Effort::quick);
    const auto before = balancer.balance(world.as_planned);
    for (auto _ : state) {
        auto balance = balancer.rebalance(before, world.changed);
        benchmark::DoNotOptimize(balance);
    }
}

}  // namespace

int main(int count, char** arguments) {
    auto demo = benchmarks::load_knowledge().and_then([](std::shared_ptr<const kitchen::Knowledge> knowledge) {
        return benchmarks::load_demo(std::move(knowledge));
    });
    if (!demo) {
        report(demo.error());
        return 1;
    }
    const auto world = world_of(std::move(*demo));
    if (!world) return 1;
    const auto add = [&](const char* name, auto workload) {
        benchmark::RegisterBenchmark(name, [&world, workload](benchmark::State& state) { workload(state, *world); });
    };
    add("else", else_on_demo);
    add("set overlap", set_overlap);
    benchmark::RegisterBenchmark("load all", load_all);
    add("load kitchen", load_kitchen);
    add("balance", balance_exact);
    add("balance month", balance_month);
    add("recompute", recompute);
    add("rebalance", rebalance);
    benchmark::Initialize(&count, arguments);
    if (benchmark::ReportUnrecognizedArguments(count, arguments)) return 2;
    benchmark::RunSpecifiedBenchmarks();
    benchmark::Shutdown();
    return 0;
}
