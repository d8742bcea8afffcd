// SPDX-License-Identifier: GPL-3.0-or-later
// What every layout of our own does with its parts: owns them, counts them, and is as wide as the widest.
#pragma once

#include <QLayout>

#include <vector>

namespace staveline::ui {

/// `Part` has a `QLayoutItem* item` and what the layout knows of it.
template <class Part> class PartsLayout : public QLayout {
public:
    ~PartsLayout() override {
        for (const Part& part : parts_)
            delete part.item;
    }
    [[nodiscard]] int count() const override { return static_cast<int>(parts_.size()); }
    [[nodiscard]] QLayoutItem* itemAt(int index) const override {
        return index >= 0 && index < count() ? parts_[static_cast<std::size_t>(index)].item : nullptr;
    }
    QLayoutItem* takeAt(int index) override {
        QLayoutItem* taken = itemAt(index);
        if (taken)
            parts_.erase(parts_.begin() + index);
        return taken;
    }
    [[nodiscard]] QSize minimumSize() const override {
        QSize size(0, 0);
        for (const Part& part : parts_)
            if (!part.item->isEmpty())
                size = size.expandedTo(part.item->minimumSize());
        return size;
    }
    [[nodiscard]] bool hasHeightForWidth() const override { return true; }

protected:
    explicit PartsLayout(QWidget* parent) : QLayout(parent) { setContentsMargins(0, 0, 0, 0); }

    std::vector<Part> parts_;
};

} // namespace staveline::ui
