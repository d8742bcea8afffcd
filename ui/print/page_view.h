// SPDX-License-Identifier: GPL-3.0-or-later
// Pages as they will print, one under the other, as wide as there is room.
#pragma once

#include "sheet/document.h"
#include "ui/print/paged_paper.h"

#include <QScrollArea>

#include <optional>

namespace staveline::ui {

class PageStack : public QWidget {
    Q_OBJECT
public:
    using QWidget::QWidget;
    void setPaper(std::optional<PagedPaper> paper);
    [[nodiscard]] const std::optional<PagedPaper>& paper() const { return paper_; }
    /// Height needed at a width.
    [[nodiscard]] int heightForWidth(int width) const override;
    [[nodiscard]] bool hasHeightForWidth() const override { return true; }

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    [[nodiscard]] QSizeF pageSize(int width) const; ///< on screen
    [[nodiscard]] int gap() const;
    std::optional<PagedPaper> paper_;
};

class PageView : public QScrollArea {
    Q_OBJECT
public:
    explicit PageView(QWidget* parent = nullptr);
    void showDocument(const sheet::Document& document, PaperSize size);
    [[nodiscard]] int pages() const;

protected:
    void resizeEvent(QResizeEvent* event) override;

private:
    void fit();
    PageStack* stack_;
};

} // namespace staveline::ui
