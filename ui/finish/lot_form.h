// SPDX-License-Identifier: GPL-3.0-or-later
// One entry about a lot, new or amended: what was read, added, moved, packed or opened, and what speaks against it.
#pragma once

#include "desk/lots.h"
#include "ui/widgets/entry_frame.h"

namespace staveline::ui {

class LotForm : public EntryFrame {
    Q_OBJECT
public:
    explicit LotForm(Session& session, QWidget* parent = nullptr);
    /// Of the lots there are, for what the form offers.
    void knowLots(const std::vector<desk::LotView>& lots);
    /// `before` is recorded with it, in one edit. One that is begun is asked about first.
    void begin(const facts::Fact& fact, const facts::LotName& lot, const std::vector<facts::Fact>& before = {});
    void amend(const std::string& table, std::int64_t id, const facts::LotName& lot);

Q_SIGNALS:
    void keptWith(const QString& lot); ///< with what was to be recorded before it

protected:
    [[nodiscard]] QString inWords() const override;
    [[nodiscard]] std::string unstoredKey() const override { return "lot"; }
    void edited() override;
    Result<desk::Recorded> store(const facts::Fact& fact) override;
    void stored(const facts::Fact& fact) override;
    void left() override;

private:
    void open(const facts::Fact& fact, const facts::LotName& lot, const std::optional<Amended>& recorded);
    [[nodiscard]] FormContext context(const facts::Fact& fact) const;

    std::vector<desk::LotView> lots_;
    facts::LotName lot_;
    std::vector<facts::Fact> before_;
};

} // namespace staveline::ui
