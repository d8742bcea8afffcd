// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/audit.h"

#include "quantity/language.h"
#include "resources/resources.h"
#include "ui/widgets/elided_label.h"
#include "ui/widgets/theme.h"

#include <QAbstractButton>
#include <QAbstractItemView>
#include <QAccessible>
#include <QAction>
#include <QHeaderView>
#include <QImage>
#include <QLabel>
#include <QLineEdit>
#include <QMap>
#include <QMenu>
#include <QMenuBar>
#include <QPixmap>
#include <QRegularExpression>
#include <QSet>
#include <QTabBar>
#include <QtTest>

namespace staveline::testing {
namespace {

QString nameOf(const QWidget& widget) {
    QString name = QString::fromLatin1(widget.metaObject()->className());
    if (const auto* button = qobject_cast<const QAbstractButton*>(&widget))
        name += " \"" + button->text() + '"';
    else if (const auto* label = qobject_cast<const QLabel*>(&widget))
        name += " \"" + label->text() + '"';
    else if (!widget.objectName().isEmpty())
        name += ' ' + widget.objectName();
    return name;
}

QList<QWidget*> visibleIn(QWidget& window) {
    QList<QWidget*> visible;
    for (QWidget* widget : window.findChildren<QWidget*>())
        if (widget->isVisible() && widget->window() == &window)
            visible << widget;
    return visible;
}

/// Something above the widget cuts it, as a scroll area may.
bool scrolledAway(const QWidget& widget) {
    return widget.visibleRegion().isEmpty();
}

bool takesTab(const QWidget& widget) {
    return widget.isEnabled() && (widget.focusPolicy() & Qt::TabFocus) && !widget.focusProxy();
}

void auditNames(QWidget& window, AuditReport& report) {
    for (QWidget* widget : visibleIn(window)) {
        if (!widget->isEnabled() || widget->focusPolicy() == Qt::NoFocus || widget->focusProxy())
            continue;
        ++report.focusable;
        QAccessibleInterface* seen = QAccessible::queryAccessibleInterface(widget);
        if (!seen || seen->text(QAccessible::Name).trimmed().isEmpty())
            report.findings << "no name: " + nameOf(*widget);
        else if (seen->role() == QAccessible::Client || seen->role() == QAccessible::NoRole)
            report.findings << "no role: " + nameOf(*widget);
    }
}

/// Tab leads from each place to the next and comes round; nothing that takes Tab is left out.
void auditTabOrder(QWidget& window, AuditReport& report) {
    QSet<QWidget*> wanted, met;
    for (QWidget* widget : visibleIn(window))
        if (takesTab(*widget))
            wanted << widget;
    if (wanted.isEmpty())
        return;
    if (!window.focusWidget())
        QTest::keyClick(&window, Qt::Key_Tab);
    for (int i = 0; i < 3 * wanted.size() + 5; ++i) {
        QWidget* at = window.focusWidget();
        met << at;
        QTest::keyClick(at ? at : &window, Qt::Key_Tab);
        if (window.focusWidget() == at && wanted.size() > 1) {
            report.findings << "Tab is trapped in " + (at ? nameOf(*at) : QString("nothing"));
            return;
        }
    }
    report.tabStops += static_cast<int>(wanted.size());
    for (QWidget* widget : wanted)
        if (!met.contains(widget))
            report.findings << "Tab never reaches " + nameOf(*widget);
}

void auditClipping(QWidget& window, AuditReport& report) {
    for (QWidget* widget : visibleIn(window)) {
        const auto* label = qobject_cast<QLabel*>(widget);
        const auto* button = qobject_cast<QAbstractButton*>(widget);
        if ((!label && !button) || scrolledAway(*widget))
            continue;
        if (label && (label->text().isEmpty()))
            continue;
        if (qobject_cast<ui::ElidedLabel*>(widget) && widget->toolTip() == label->text())
            continue; // shortened with a mark, and whole under the pointer
        ++report.labels;
        const QSize has = widget->size(), wants = widget->sizeHint();
        const bool wraps = label && label->wordWrap();
        const bool clipped = wraps ? has.height() < label->heightForWidth(has.width())
                                   : has.width() < wants.width() || has.height() < wants.height();
        if (clipped)
            report.findings << QString("clipped: %1 has %2x%3, wants %4x%5")
                                   .arg(nameOf(*widget))
                                   .arg(has.width())
                                   .arg(has.height())
                                   .arg(wants.width())
                                   .arg(wraps ? label->heightForWidth(has.width()) : wants.height());
    }
}

void judge(const QImage& picture, const QRect& part, const QString& what, AuditReport& report) {
    const double contrast = inkContrast(picture, part);
    ++report.contrasts;
    report.worstContrast = std::min(report.worstContrast, contrast);
    if (contrast < 4.5)
        report.findings << QString("contrast %1: %2").arg(contrast, 0, 'f', 2).arg(what);
}

void auditCells(const QImage& picture, QWidget& window, QAbstractItemView& view, AuditReport& report) {
    const QAbstractItemModel* model = view.model();
    for (int row = 0; model && row < std::min(model->rowCount(), 12); ++row)
        for (int column = 0; column < model->columnCount(); ++column) {
            const QModelIndex index = model->index(row, column);
            const QRect cell = view.visualRect(index).intersected(view.viewport()->rect());
            if (index.data().toString().isEmpty() || cell.size() != view.visualRect(index).size())
                continue;
            judge(picture, QRect(view.viewport()->mapTo(&window, cell.topLeft()), cell.size()),
                  "cell \"" + index.data().toString() + '"', report);
        }
}

void auditContrast(QWidget& window, AuditReport& report) {
    const QImage picture = window.grab().toImage();
    for (QWidget* widget : visibleIn(window)) {
        if (!widget->isEnabled() || scrolledAway(*widget))
            continue;
        const QRect part(widget->mapTo(&window, QPoint(0, 0)), widget->size());
        if (auto* view = qobject_cast<QAbstractItemView*>(widget); view && !qobject_cast<QHeaderView*>(widget))
            auditCells(picture, window, *view, report);
        const auto* label = qobject_cast<QLabel*>(widget);
        const auto* button = qobject_cast<QAbstractButton*>(widget);
        const auto* line = qobject_cast<QLineEdit*>(widget);
        const bool words = (label && !label->text().isEmpty()) || (button && !button->text().isEmpty()) ||
                           (line && !(line->text() + line->placeholderText()).isEmpty());
        const bool whole = widget->visibleRegion().boundingRect() == widget->rect(); // no ink of a part is lost
        if (words && whole && window.rect().contains(part))
            judge(picture, part, nameOf(*widget), report);
    }
}

void auditKeys(QWidget& window, AuditReport& report) {
    QMap<QString, QString> taken;
    const auto take = [&](const QKeySequence& key, const QString& by) {
        if (key.isEmpty())
            return;
        ++report.shortcuts;
        const QString name = key.toString();
        if (taken.contains(name))
            report.findings << "key " + name + " means " + taken[name] + " and " + by;
        taken[name] = by;
    };
    for (const QAction* action : window.findChildren<QAction*>())
        take(action->shortcut(), action->text());
    for (QWidget* widget : visibleIn(window)) {
        if (const auto* button = qobject_cast<QAbstractButton*>(widget); button && button->isEnabled())
            take(QKeySequence::mnemonic(button->text()), nameOf(*widget));
        if (const auto* label = qobject_cast<QLabel*>(widget); label && label->buddy())
            take(QKeySequence::mnemonic(label->text()), nameOf(*widget));
        if (const auto* bar = qobject_cast<QMenuBar*>(widget))
            for (const QAction* menu : bar->actions())
                take(QKeySequence::mnemonic(menu->text()), "menu " + menu->text());
        if (const auto* bar = qobject_cast<QTabBar*>(widget))
            for (int i = 0; i < bar->count(); ++i)
                take(QKeySequence::mnemonic(bar->tabText(i)), "page " + bar->tabText(i));
    }
}

/// Within one menu each mnemonic stands for one thing.
void auditMenus(QWidget& window, AuditReport& report) {
    for (const QMenu* menu : window.findChildren<QMenu*>()) {
        QMap<QString, QString> taken;
        for (const QAction* action : menu->actions()) {
            const QString key = QKeySequence::mnemonic(action->text()).toString();
            if (key.isEmpty())
                continue;
            if (taken.contains(key))
                report.findings << "menu " + menu->title() + ": " + taken[key] + " and " + action->text();
            taken[key] = action->text();
        }
    }
}

void auditSheets(QWidget& window, AuditReport& report) {
    static const QRegularExpression literal("#[0-9a-fA-F]{3,8}|rgba?\\(|hsl");
    QList<QWidget*> all = window.findChildren<QWidget*>();
    all << &window;
    for (const QWidget* widget : all) {
        ++report.sheets;
        if (widget->styleSheet().contains(literal))
            report.findings << "colour in the style sheet of " + nameOf(*widget);
    }
}

const QRegularExpression& asciiWords() {
    static const QRegularExpression word("(?<![\\w])[A-Za-z]{3,}(?![\\w])",
                                         QRegularExpression::UseUnicodePropertiesOption);
    return word;
}

void addCells(const QAbstractItemModel& model, QList<QPair<QString, QString>>& texts) {
    for (int column = 0; column < model.columnCount(); ++column) {
        texts << QPair(QString("heading"), model.headerData(column, Qt::Horizontal).toString());
        for (int row = 0; row < std::min(model.rowCount(), 12); ++row)
            texts << QPair(QString("cell"), model.index(row, column).data().toString());
    }
}

/// Each with where it stands.
QList<QPair<QString, QString>> textsIn(QWidget& window) {
    QList<QPair<QString, QString>> texts;
    for (QWidget* widget : visibleIn(window)) {
        const QString what = QString::fromLatin1(widget->metaObject()->className());
        texts << QPair("tip of " + what, widget->toolTip()) << QPair("name of " + what, widget->accessibleName());
        if (const auto* label = qobject_cast<const QLabel*>(widget))
            texts << QPair(what, label->text());
        if (const auto* button = qobject_cast<const QAbstractButton*>(widget))
            texts << QPair(what, button->text());
        if (const auto* line = qobject_cast<const QLineEdit*>(widget))
            texts << QPair(what, line->placeholderText());
        if (const auto* view = qobject_cast<const QAbstractItemView*>(widget); view && view->model())
            addCells(*view->model(), texts);
    }
    for (const QAction* action : window.findChildren<QAction*>())
        texts << QPair(QString("menu"), action->text());
    return texts;
}

/// A sentence stands once on a page; a few words may be a name that is used again.
void auditRepeats(QWidget& window, AuditReport& report) {
    static const QRegularExpression tag("<[^>]*>"), end("(?<=[.!?])\\s+");
    constexpr int sentence = 5; // words
    QSet<QString> said;
    for (const QWidget* widget : visibleIn(window)) {
        const auto* label = qobject_cast<const QLabel*>(widget);
        if (!label)
            continue;
        for (const QString& part : QString(label->text()).remove(tag).split(end)) {
            const QString words = part.simplified();
            if (words.count(' ') + 1 >= sentence && words.endsWith('.') && said.contains(words))
                report.findings << "said twice: " + words;
            said << words;
        }
    }
}

/// What those who made the book wrote, units, and the keys of a keyboard are the same in every language.
const QSet<QString>& sameInAll() {
    static const QSet<QString> words = [] {
        const auto book = resources::find("demo-data/sample-cellar.json");
        const QString known = QString::fromUtf8(book.data(), static_cast<qsizetype>(book.size())) +
                              " Curlew Barn Staveline English Deutsch IBU EBC SRM bar psi min vol gal Ctrl Shift Alt "
                              "Tab Enter Esc Del Home End PgUp PgDown Letter PDF HTML Markdown CSV PNG SVG XLSX "
                              "BeerJSON BeerXML cellar Strg tmp staveline";
        QSet<QString> all;
        for (auto at = asciiWords().globalMatch(known); at.hasNext();)
            all << at.next().captured();
        return all;
    }();
    return words;
}

/// In the pseudo-language every letter of ours is accented: one that is not was never looked up.
void auditWords(QWidget& window, AuditReport& report) {
    if (spoken() != pseudoLanguage())
        return;
    static const QRegularExpression markup("<[^>]*>|&[a-z]+;");
    for (const auto& [what, text] : textsIn(window))
        for (auto at = asciiWords().globalMatch(QString(text).remove(markup).remove('&')); at.hasNext();)
            if (const QString word = at.next().captured(); !sameInAll().contains(word))
                report.findings << QString("not looked up: \"%1\" in %2: %3").arg(word, what, text);
}

} // namespace

void AuditReport::add(const AuditReport& other) {
    focusable += other.focusable;
    tabStops += other.tabStops;
    labels += other.labels;
    contrasts += other.contrasts;
    shortcuts += other.shortcuts;
    sheets += other.sheets;
    worstContrast = std::min(worstContrast, other.worstContrast);
    findings << other.findings;
}

QString AuditReport::summary() const {
    return QString("audit: %1 focusable, %2 tab stops, %3 labels and buttons, %4 contrasts (worst %5), %6 keys, "
                   "%7 style sheets, %8 findings")
        .arg(focusable)
        .arg(tabStops)
        .arg(labels)
        .arg(contrasts)
        .arg(worstContrast, 0, 'f', 2)
        .arg(shortcuts)
        .arg(sheets)
        .arg(findings.size());
}

double inkContrast(const QImage& picture, const QRect& part) {
    const double ratio = picture.devicePixelRatio();
    const QRect area = QRect(part.topLeft() * ratio, part.size() * ratio).intersected(picture.rect());
    QMap<QRgb, int> counts;
    for (int y = area.top(); y <= area.bottom(); ++y)
        for (int x = area.left(); x <= area.right(); ++x)
            ++counts[picture.pixel(x, y)];
    QRgb background = 0;
    int most = 0;
    for (auto it = counts.begin(); it != counts.end(); ++it)
        if (it.value() > most) {
            most = it.value();
            background = it.key();
        }
    double best = 1;
    for (auto it = counts.begin(); it != counts.end(); ++it)
        best = std::max(best, ui::contrast(QColor(it.key()), QColor(background)));
    return best;
}

AuditReport audit(QWidget& window) {
    AuditReport report;
    auditNames(window, report);
    auditClipping(window, report);
    auditContrast(window, report);
    auditKeys(window, report);
    auditMenus(window, report);
    auditSheets(window, report);
    auditRepeats(window, report);
    auditWords(window, report);
    auditTabOrder(window, report); // last: it moves the focus
    return report;
}

} // namespace staveline::testing
