// Indices ordered by activity, the most active on top.
#pragma once

#include <cstdint>
#include <vector>

namespace piewright::learn {

class ActivityHeap {
  public:
    void clear() {
        heap_.clear();
        position_.clear();
        activity_.clear();
    }
    /// The next index, with this activity; it is on the heap.
    void add(double activity) {
        activity_.push_back(activity);
        position_.push_back(-1);
        insert(static_cast<std::int32_t>(activity_.size()) - 1);
    }
    [[nodiscard]] double activity(std::int32_t index) const { return activity_[at(index)]; }
    [[nodiscard]] bool empty() const { return heap_.empty(); }

    void insert(std::int32_t index) {
        if (position_[at(index)] >= 0) return;
        position_[at(index)] = static_cast<std::int32_t>(heap_.size());
        heap_.push_back(index);
        up(position_[at(index)]);
    }

    std::int32_t pop() {
        const std::int32_t top = heap_.front();
        position_[at(top)] = -1;
        const std::int32_t moved = heap_.back();
        heap_.pop_back();
        if (!heap_.empty()) {
            heap_.front() = moved;
            position_[at(moved)] = 0;
            down(0);
        }
        return top;
    }

    void bump(std::int32_t index, double by) {
        activity_[at(index)] += by;
        if (position_[at(index)] >= 0) up(position_[at(index)]);
    }

    void rescale(double factor) {
        for (double& activity : activity_) activity *= factor;
    }

  private:
    static std::size_t at(std::int32_t index) { return static_cast<std::size_t>(index); }
    /// Equals by index, so that the order never depends on history.
    [[nodiscard]] bool above(std::int32_t x, std::int32_t y) const {
        return activity_[at(x)] != activity_[at(y)] ? activity_[at(x)] > activity_[at(y)] : x < y;
    }

    void up(std::int32_t place) {
        const std::int32_t moved = heap_[at(place)];
        while (place > 0) {
            const std::int32_t parent = (place - 1) / 2;
            if (!above(moved, heap_[at(parent)])) break;
            heap_[at(place)] = heap_[at(parent)];
            position_[at(heap_[at(place)])] = place;
            place = parent;
        }
        heap_[at(place)] = moved;
        position_[at(moved)] = place;
    }

    void down(std::int32_t place) {
        const std::int32_t moved = heap_[at(place)];
        const auto size = static_cast<std::int32_t>(heap_.size());
        for (std::int32_t child = 2 * place + 1; child < size; child = 2 * place + 1) {
            if (child + 1 < size && above(heap_[at(child + 1)], heap_[at(child)])) ++child;
            if (!above(heap_[at(child)], moved)) break;
            heap_[at(place)] = heap_[at(child)];
            position_[at(heap_[at(place)])] = place;
            place = child;
        }
        heap_[at(place)] = moved;
        position_[at(moved)] = place;
    }

    std::vector<std::int32_t> heap_;
    std::vector<std::int32_t> position_; ///< -1: not on the heap
    std::vector<double> activity_;
};

} // namespace piewright::learn
