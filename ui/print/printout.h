// SPDX-License-Identifier: GPL-3.0-or-later
// A paper that can leave the window: by printer, or as a file in one of its formats. It is made when it is asked for.
#pragma once

#include "sheet/document.h"
#include "ui/present/session.h"
#include "ui/print/paper.h"
#include "ui/widgets/prompt.h"

#include <functional>

namespace staveline::ui {

class Printout {
public:
    struct Made {
        sheet::Document document;
        QString file;                        ///< the name offered, without its ending
        std::optional<std::string> csv = {}; ///< what a CSV file gets instead of the paper: figures for other programs
    };
    using Maker = std::function<std::optional<Made>()>; ///< none: there is no such paper now

    /// `name` for menus and dialogs: "brew sheet"; `formats` besides the printer.
    Printout(Session& session, Prompt& prompt, QString name, std::vector<sheet::PaperFormat> formats, Maker make);
    [[nodiscard]] const QString& name() const { return name_; }
    [[nodiscard]] bool offers(sheet::PaperFormat format) const;
    void setSize(PaperSize size) { size_ = size; }
    [[nodiscard]] PaperSize size() const { return size_; }
    // How it went, and that there is no paper, is said by the session.
    void print(QWidget& asker) const;
    void save(QWidget& asker, sheet::PaperFormat format) const;

private:
    [[nodiscard]] std::optional<Made> made() const;
    void tell(const Result<void>& done, const QString& words) const;

    Session& session_;
    Prompt& prompt_;
    QString name_;
    std::vector<sheet::PaperFormat> formats_;
    Maker make_;
    PaperSize size_ = PaperSize::a4;
};

} // namespace staveline::ui
